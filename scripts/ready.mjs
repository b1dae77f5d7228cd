// Makes a fresh clone ready: installs what the lockfile names when node_modules does not hold it.
// Used by every other script here. Needs Node alone. Everything it prints goes to standard error.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));
const lockfile = `${root}package-lock.json`;
const installed = `${root}node_modules/.package-lock.json`;
const turn = `${root}.installing`;

function modifiedMs(file) {
  return statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}

function packagesIn(file) {
  return JSON.parse(readFileSync(file, 'utf8')).packages;
}

/** Whether node_modules holds every package of the lockfile in its version. */
export function isInstalled() {
  const installedMs = modifiedMs(installed);
  if (installedMs === 0) return false;
  // A fresh checkout gives the lockfile a new time, so the time alone does not mean that anything changed.
  if (installedMs > modifiedMs(lockfile)) return true;
  const have = packagesIn(installed);
  return Object.entries(packagesIn(lockfile)).every(
    ([path, wanted]) => path === '' || have[path]?.version === wanted.version || (wanted.optional && have[path] === undefined),
  );
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** One install at a time: true when it is ours to do, false when another process is at it. */
function takeTurn() {
  try {
    mkdirSync(turn);
    writeFileSync(`${turn}/pid`, String(process.pid));
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  const pid = Number.parseInt(statSync(`${turn}/pid`, { throwIfNoEntry: false }) ? readFileSync(`${turn}/pid`, 'utf8') : '', 10);
  const isStale = Number.isNaN(pid) ? Date.now() - modifiedMs(turn) > 5000 : !isAlive(pid);
  if (isStale) rmSync(turn, { recursive: true, force: true });
  return false;
}

/** npm with these words, in the project; what it prints goes to standard error. */
export function runNpm(words) {
  const npm = process.env.npm_execpath?.endsWith('npm-cli.js') ? [process.execPath, process.env.npm_execpath] : ['npm'];
  // NODE_ENV and npm_config_omit of the caller would leave out what the build needs.
  const { NODE_ENV, npm_config_omit, npm_config_production, ...env } = process.env;
  return spawnSync(npm[0], [...npm.slice(1), ...words], { cwd: root, env, stdio: ['ignore', 2, 2] });
}

/** Does it while no other process changes node_modules, and returns what it returns. */
export function oneAtATime(act) {
  while (!takeTurn()) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
  try {
    return act();
  } finally {
    rmSync(turn, { recursive: true, force: true });
  }
}

function install() {
  console.error('ovenward: installing what package-lock.json names (npm ci); this happens once');
  // Install scripts are left out: only the store needs one, and readyStore.mjs runs it for those who need the store.
  const words = ['ci', '--include=dev', '--include=optional', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=warn'];
  const { status, error } = runNpm(words);
  if (status === 0) return true;
  console.error(
    `ovenward: npm ci failed${error ? ` (${error.message})` : ''}. Check the network and the registry, then run it by hand.`,
  );
  return false;
}

/** Installs what is missing and says whether it had to. Ends the process with code 3 when that fails. */
export function ready() {
  if (isInstalled()) return false;
  if (!oneAtATime(() => isInstalled() || install())) process.exit(3);
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) ready();
