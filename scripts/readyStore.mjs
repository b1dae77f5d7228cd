// Builds the native part of better-sqlite3 where it is missing: packages are installed without their scripts, and it needs one.
// Used by test.mjs, and by ovenward.mjs for the commands that keep something. Everything it prints goes to standard error.
import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { oneAtATime, ready, root, runNpm } from './ready.mjs';

const native = `${root}node_modules/better-sqlite3/build/Release/better_sqlite3.node`;
const words = ['rebuild', 'better-sqlite3', '--ignore-scripts=false', '--no-audit', '--no-fund', '--loglevel=warn'];

function make() {
  console.error(
    'ovenward: fetching or building the native part of better-sqlite3 (npm rebuild); up to two minutes, this happens once',
  );
  const { status, error } = runNpm(words);
  if (status === 0 && existsSync(native)) return true;
  console.error(
    `ovenward: npm rebuild better-sqlite3 failed${error ? ` (${error.message})` : ''}. It needs the network, and where nothing built is offered Python, make and a C++ compiler. Then run by hand: npm rebuild better-sqlite3 --ignore-scripts=false`,
  );
  return false;
}

/** Builds it when it is missing and says whether it had to. Ends the process with code 3 when that fails. */
export function readyStore() {
  if (existsSync(native)) return false;
  if (!oneAtATime(() => existsSync(native) || make())) process.exit(3);
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  ready();
  readyStore();
}
