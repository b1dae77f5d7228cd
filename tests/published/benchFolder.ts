// Where published instances are looked for, and what is said when they are not there. Used by the published cases.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const BENCH = resolve(import.meta.dirname, '../../../shared/bench');

export const FOLDERS = ['jobshop', 'flexible', 'flowshop', 'rcpsp', 'rcpsp-max', 'tardiness', 'osp'] as const;
export type Folder = (typeof FOLDERS)[number];

/** Whether the instances are there: all folders, or none counts. */
export const isPresent = FOLDERS.every((folder) => existsSync(join(BENCH, folder)));

export const ABSENT =
  `PUBLISHED INSTANCES ARE ABSENT: nothing in ${BENCH}. ` +
  'The bars on published instances are not checked in this run; only the tables that stand in the tests are.';

/** The instances of a folder, by name, as they were read. */
export function instancesOf(folder: Folder): readonly { readonly name: string; readonly data: unknown }[] {
  return readdirSync(join(BENCH, folder))
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => ({ name: file.replace(/\.json$/, ''), data: JSON.parse(readFileSync(join(BENCH, folder, file), 'utf8')) }));
}
