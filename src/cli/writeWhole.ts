// Writes a file whole or not at all: beside its place first, then renamed. Used for plans and sheets.
import { access, constants, mkdir, realpath, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { BadInput } from './badInput.ts';
import { errorCode } from './errorCode.ts';

export function unwritable(file: string, says: string): BadInput {
  return new BadInput(file, [{ code: 'FILE_UNWRITABLE', path: '', says, doThis: 'name another place to write to' }]);
}

/** What a path leads to, or undefined when there is nothing. */
async function found(path: string) {
  try {
    return await stat(path);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}

async function isSameFile(file: string, other: string): Promise<boolean> {
  return (
    (await found(file)) !== undefined && (await found(other)) !== undefined && (await realpath(file)) === (await realpath(other))
  );
}

/**
 * Makes sure a file can be written, before the work that fills it: its folder is made when missing, a folder or device
 * in its place and the inputs themselves are refused.
 */
export async function prepareToWrite(file: string, inputs: readonly string[]): Promise<void> {
  try {
    await mkdir(dirname(file), { recursive: true });
    await access(dirname(file), constants.W_OK);
    const there = await found(file);
    if (there !== undefined && !there.isFile()) throw unwritable(file, 'there is something here that is not a file');
    for (const input of inputs)
      if (input !== '-' && (await isSameFile(file, input))) throw unwritable(file, 'this is the input; it would be overwritten');
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw unwritable(file, `it cannot be written (${errorCode(error)})`);
  }
}

export async function writeWhole(file: string, text: string): Promise<void> {
  try {
    // Most plans are only told.
    const { default: writeFileAtomic } = await import('write-file-atomic');
    await writeFileAtomic(file, text);
  } catch (error) {
    throw unwritable(file, `it cannot be written (${errorCode(error)})`);
  }
}
