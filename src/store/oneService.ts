// Sees to it that one service at a time works on a store: two would both take up the work that a stop left open. Used by `ovenward serve`.
// The system lets go of the lock when the process ends, however it ends.
import Database from 'better-sqlite3';
import { faultOf } from './faultOf.ts';
import { StoreFault } from './storeFault.ts';

/** An empty database beside the store, held for as long as the service runs; it is left there, as taking it away could split the lock. */
function lockFile(file: string): string {
  return `${file}.serving`;
}

function isBusy(error: unknown): boolean {
  return error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
}

/** Returns what lets go. Throws a StoreFault when another service holds the store. */
export function oneService(file: string): () => void {
  const db = new Database(lockFile(file), { timeout: 0 });
  try {
    db.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    db.close();
    if (!isBusy(error)) throw faultOf(error, file);
    throw new StoreFault('LOCKED', `Another service works on the store ${file}. Stop that one, or name another store.`, error);
  }
  return () => {
    db.close();
  };
}
