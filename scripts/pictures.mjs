// `npm run pictures`: makes the pictures of the README anew, each from the plan that is kept beside it.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './ready.mjs';

const out = mkdtempSync(join(tmpdir(), 'ovenward-pictures-'));
const words = ['plan', 'scenarios/two-hands-and-leaven.yaml', '--out', out, '--effort', '3000'];
const { status } = spawnSync(process.execPath, [`${root}scripts/ovenward.mjs`, ...words], { cwd: root, stdio: 'inherit' });
if (status === 0) {
  copyFileSync(join(out, 'plan.json'), join(root, 'docs/pictures/morning.json'));
  copyFileSync(join(out, 'sheet.svg'), join(root, 'docs/pictures/morning.svg'));
}
rmSync(out, { recursive: true });
process.exit(status ?? 3);
