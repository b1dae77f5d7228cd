// Finds a Chromium for the tests that look at pages in a browser: the environment's CHROMIUM first, then the usual names.
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome'];

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Path of a Chromium. Throws with what to do when there is none. */
export function chromiumPath(environment: Readonly<Record<string, string | undefined>> = process.env): string {
  const named = environment.CHROMIUM;
  if (named !== undefined && named !== '') {
    if (isProgram(named)) return named;
    throw new Error(`CHROMIUM is set to ${named}, which is no program. Set it to the path of a Chromium, or unset it.`);
  }
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const onPath = folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  const found = ['/usr/bin/chromium', ...onPath].find(isProgram);
  if (found !== undefined) return found;
  throw new Error('No Chromium found. Install the package chromium, or set CHROMIUM to the path of one.');
}

/** Flags that keep Chromium quiet and off the network. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
