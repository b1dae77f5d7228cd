// The program as it is when it is installed: built, with no sources beside it. Made once for all rounds, so that edits made meanwhile do
// not mix. Used by manyRounds.ts and killed.test.ts.
import { cpSync, symlinkSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from '../../../scripts/build.mjs';

const root = resolve(import.meta.dirname, '../../..');
/** What the build writes before it gives a file its name. */
const UNFINISHED = /\.\d+$/;

/** @returns the path of the command in `folder`. */
export function installedIn(folder: string): string {
  build();
  cpSync(join(root, 'dist'), join(folder, 'dist'), { recursive: true, filter: (file) => !UNFINISHED.test(file) });
  for (const file of ['package.json', 'scripts/ovenward.mjs']) cpSync(join(root, file), join(folder, file));
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  return join(folder, 'scripts/ovenward.mjs');
}
