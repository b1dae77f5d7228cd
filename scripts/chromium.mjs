// Finds a Chromium for the tests that look at drawn pages, or installs one. Used by scripts/test.mjs and vitest.config.ts.
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const PACKAGE = 'chromium';

function isRunnable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The path of a Chromium: what CHROMIUM names, else the first on PATH, else undefined. */
export function findChromium(env = process.env) {
  if (env.CHROMIUM) return isRunnable(env.CHROMIUM) ? env.CHROMIUM : undefined;
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find(isRunnable);
}

function aptGet(env, ...words) {
  spawnSync('apt-get', words, { env: { ...env, DEBIAN_FRONTEND: 'noninteractive' }, stdio: ['ignore', 2, 2] });
}

/** Why there is no Chromium and what to do about it, in a sentence for people. */
function whatToDo(env) {
  if (env.CHROMIUM) return `CHROMIUM names ${env.CHROMIUM}, which is not a program that can be run. Correct it or unset it.`;
  return 'Some tests look at drawn pages and need Chromium. Install the package "chromium", or set CHROMIUM to the path of one.';
}

/** Finds a Chromium, installing the Debian package when we may. Throws an error saying what to do when there is none. */
export function needChromium(env = process.env, isRoot = process.getuid?.() === 0) {
  const found = findChromium(env);
  if (found) return found;
  if (!env.CHROMIUM && isRoot) {
    console.error('ovenward: installing Chromium for the tests (apt-get install chromium); this happens once');
    // Package lists may be there already; an update that fails is only fatal when the install then fails as well.
    aptGet(env, 'update');
    aptGet(env, 'install', '-y', '--no-install-recommends', PACKAGE);
  }
  const installed = findChromium(env);
  if (installed) return installed;
  throw new Error(whatToDo(env));
}
