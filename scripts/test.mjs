// `npm test`: installs what is missing, the native part of the store too, finds or installs Chromium, builds the
// command, then runs every test.
// Words after `npm test --` go to vitest, as in `npm test -- tests/cli`.
import { spawnSync } from 'node:child_process';
import { build } from './build.mjs';
import { needChromium } from './chromium.mjs';
import { ready, root } from './ready.mjs';
import { readyStore } from './readyStore.mjs';

ready();
readyStore();
let chromium;
try {
  chromium = needChromium();
} catch (error) {
  console.error(`ovenward: ${error.message}`);
  process.exit(1);
}
build();
// Colours are for terminals; a log is read by people and programs.
const colours = process.stdout.isTTY || process.env.FORCE_COLOR ? {} : { NO_COLOR: '1' };
const { status, signal } = spawnSync(
  process.execPath,
  [`${root}node_modules/vitest/vitest.mjs`, 'run', ...process.argv.slice(2)],
  { cwd: root, env: { ...process.env, ...colours, CHROMIUM: chromium }, stdio: ['ignore', 'inherit', 'inherit'] },
);
if (signal) console.error(`ovenward: the tests were ended by ${signal}`);
process.exit(status ?? 1);
