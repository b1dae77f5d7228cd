// Several files that change together: all are written beside their places first, and take them only when all else has gone well.
// Used by `post`, whose sheet must be whole, of one plan, and no newer than the posted plan.
import { renameSync } from 'node:fs';
import { open, readdir, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { errorCode } from './errorCode.ts';
import { unwritable } from './writeWhole.ts';

export type WantedFile = { readonly file: string; readonly text: string };

export type FilesBeside = {
  /** Puts every file in its place. */
  readonly place: () => void;
  /** Takes away what was written and not placed. */
  readonly discard: () => Promise<void>;
};

/** `.sheet.svg.posting-4711` beside sheet.svg, 4711 being the process. */
function besideName(file: string): string {
  return join(dirname(file), `.${basename(file)}.posting-${process.pid}`);
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it is there and belongs to somebody else.
    return errorCode(error) !== 'ESRCH';
  }
}

/** Runs that were killed leave what they had written beside. */
async function removeLeftOver(file: string): Promise<void> {
  const start = `.${basename(file)}.posting-`;
  for (const name of await readdir(dirname(file))) {
    const pid = name.startsWith(start) ? Number(name.slice(start.length)) : Number.NaN;
    if (Number.isInteger(pid) && !isAlive(pid)) await rm(join(dirname(file), name), { force: true });
  }
}

/** The rights of the file that is there stay. */
async function rightsOf(file: string): Promise<number> {
  try {
    return (await stat(file)).mode & 0o777;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return 0o666;
    throw error;
  }
}

async function writeBeside({ file, text }: WantedFile): Promise<void> {
  const handle = await open(besideName(file), 'w', await rightsOf(file));
  try {
    await handle.writeFile(text);
    // On the disk before it takes the place of what is there: a power cut leaves the old file or the new one.
    await handle.sync();
  } finally {
    await handle.close();
  }
}

export async function filesBeside(wanted: readonly WantedFile[]): Promise<FilesBeside> {
  const discard = async (): Promise<void> => {
    for (const { file } of wanted) await rm(besideName(file), { force: true });
  };
  for (const each of wanted) {
    try {
      await removeLeftOver(each.file);
      await writeBeside(each);
    } catch (error) {
      await discard();
      throw unwritable(each.file, `it cannot be written (${errorCode(error)})`);
    }
  }
  return {
    // One after the other without a pause: no signal is handled between two pages.
    place: () => {
      for (const { file } of wanted) renameSync(besideName(file), file);
    },
    discard,
  };
}
