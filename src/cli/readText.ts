// The text of an input file, or of standard input for `-`. Used by every command.
import { readFile } from 'node:fs/promises';
import { BadInput } from './badInput.ts';
import { errorCode } from './errorCode.ts';
import type { Surroundings } from './surroundings.ts';

/** Largest input in bytes, included: a scenario of a thousand orders is a hundredth of it. */
const MAX_BYTES = 20_000_000;

function fault(fileName: string, code: string, says: string, doThis: string): BadInput {
  return new BadInput(fileName, [{ code, path: '', says, doThis }]);
}

function whyUnread(fileName: string, error: unknown): BadInput {
  const code = errorCode(error);
  if (code === 'ENOENT')
    return fault(fileName, 'FILE_MISSING', 'there is no such file', 'check the name and the folder you are in');
  if (code === 'EISDIR') return fault(fileName, 'FILE_IS_FOLDER', 'this is a folder', 'name a file in it');
  return fault(fileName, 'FILE_UNREADABLE', `the file cannot be read (${code})`, 'check its permissions');
}

async function bytesOf(fileName: string, surroundings: Surroundings): Promise<Uint8Array> {
  if (fileName === '-') return surroundings.readStdin();
  try {
    return await readFile(fileName);
  } catch (error) {
    throw whyUnread(fileName, error);
  }
}

export async function readText(fileName: string, surroundings: Surroundings): Promise<string> {
  const bytes = await bytesOf(fileName, surroundings);
  if (bytes.byteLength > MAX_BYTES)
    throw fault(fileName, 'FILE_TOO_LARGE', `the file is larger than ${MAX_BYTES / 1e6} MB`, 'check that it is the right file');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw fault(fileName, 'TEXT_NOT_UTF8', 'the file is not text in UTF-8', 'save it as plain text, encoding UTF-8');
  }
}
