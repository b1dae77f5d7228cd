// Turns what SQLite and better-sqlite3 throw into a StoreFault that says what to do; what is neither is handed on as it is.
import Database from 'better-sqlite3';
import { StoreFault, type StoreFaultCode } from './storeFault.ts';

/** Beginnings of SQLite's result codes (sqlite.org, "Result and Error Codes"); the first that fits counts. */
const BY_RESULT: readonly (readonly [beginning: string, code: StoreFaultCode, says: string])[] = [
  ['SQLITE_BUSY', 'LOCKED', 'is held by another process; nothing was changed. Try again, or end that process.'],
  ['SQLITE_LOCKED', 'LOCKED', 'is held by another process; nothing was changed. Try again, or end that process.'],
  ['SQLITE_FULL', 'DISK_FULL', 'cannot grow: the disk is full; nothing was changed. Make room and try again.'],
  ['SQLITE_NOTADB', 'NOT_A_STORE', 'is no store of ovenward. Name another file.'],
  ['SQLITE_CORRUPT', 'DAMAGED', 'is damaged. Stop the service and bring back the last backup.'],
  ['SQLITE_IOERR', 'DISK_FAULT', 'could not be read or written: the disk failed. Look at the disk before you try again.'],
  ['SQLITE_CANTOPEN', 'CANNOT_OPEN', 'cannot be opened. Look whether the folder exists and may be written to.'],
  ['SQLITE_READONLY', 'CANNOT_OPEN', 'may not be written to. Change the rights of the file and of its folder.'],
  ['SQLITE_PERM', 'CANNOT_OPEN', 'may not be opened. Change the rights of the file and of its folder.'],
];

function codeOf(error: Error): string {
  return 'code' in error && typeof error.code === 'string' ? error.code : '';
}

function isNativeMissing(error: Error): boolean {
  return codeOf(error) === 'ERR_DLOPEN_FAILED' || error.message.startsWith('Could not locate the bindings file');
}

/** @param file - the store's, for the sentence. */
export function faultOf(error: unknown, file: string): unknown {
  if (error instanceof StoreFault || !(error instanceof Error)) return error;
  if (isNativeMissing(error))
    return new StoreFault(
      'NATIVE_MISSING',
      'The native part of better-sqlite3 is missing or was built for another version of Node. Run: npm rebuild better-sqlite3 --ignore-scripts=false',
      error,
    );
  if (error.message === 'The database connection is not open')
    return new StoreFault('CLOSED', `The store ${file} has been closed.`, error);
  const result = codeOf(error);
  const [, code, says] = BY_RESULT.find(([beginning]) => result.startsWith(beginning)) ?? [];
  if (code !== undefined) return new StoreFault(code, `The store ${file} ${says}`, error);
  if (error instanceof Database.SqliteError)
    return new StoreFault(
      'REFUSED',
      `The store ${file} does not take this: ${error.message} (${result}). Nothing was changed.`,
      error,
    );
  return error;
}
