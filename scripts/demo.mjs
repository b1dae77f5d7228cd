// `npm run demo`: plans a morning of an invented bakery, prints it, and writes plan and sheet to out/.
import { spawnSync } from 'node:child_process';
import { root } from './ready.mjs';

const scenario = 'scenarios/two-hands-and-leaven.yaml';
// Effort and not seconds, so that it is the same plan on every machine.
const words = ['plan', scenario, '--out', 'out', '--effort', '3000', ...process.argv.slice(2)];
console.error(`ovenward ${words.join(' ')}\n`);
// The command installs what is missing and builds by itself.
const { status } = spawnSync(process.execPath, [`${root}scripts/ovenward.mjs`, ...words], { cwd: root, stdio: 'inherit' });
// A tray that is late is an answer of the planner, not a failure of the demo.
process.exit(status === 1 ? 0 : (status ?? 3));
