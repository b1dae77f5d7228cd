// Starts a benchmark: `node benchmarks/start.mjs NAME words...`. Installs what is missing, builds the program once for the
// whole run, so that edits made meanwhile do not mix, and hands over to benchmarks/run/NAME.ts.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from '../scripts/build.mjs';
import { ready, root } from '../scripts/ready.mjs';
import { endOf } from './endOf.mjs';

const here = fileURLToPath(new URL('.', import.meta.url));

/** Whether the solver to compare with is there in the version of package.json. */
function isInstalled() {
  const { dependencies } = JSON.parse(readFileSync(`${here}package.json`, 'utf8'));
  return Object.entries(dependencies).every(([name, version]) => {
    const file = `${here}node_modules/${name}/package.json`;
    return existsSync(file) && JSON.parse(readFileSync(file, 'utf8')).version === version;
  });
}

ready();
const [name, ...words] = process.argv.slice(2);
if (name === undefined || !existsSync(`${here}run/${name}.ts`)) throw new Error(`no benchmark ${name}`);
if (!isInstalled()) {
  console.error('ovenward: installing what benchmarks/package-lock.json names (npm ci); this happens once, 330 MB');
  const options = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=warn'];
  const { status } = spawnSync('npm', options, { cwd: here, stdio: ['ignore', 2, 2] });
  if (status !== 0) process.exit(3);
}
build(`${root}src/`, `${here}dist/program/`);
const child = spawnSync(process.execPath, ['--import', 'tsx', `${here}run/${name}.ts`, ...words], {
  cwd: root,
  stdio: ['ignore', 'inherit', 'inherit'],
});
const { code, says } = endOf(child);
if (says !== null) console.error(`ovenward: ${says}`);
process.exit(code);
