// Opens the SQLite file of the store, or makes it: looks that it is ours before it is touched, sets how it is written, migrates it.
// Used by openStore.ts.
import { closeSync, openSync, readSync } from 'node:fs';
import { resolve } from 'node:path';
import Database from 'better-sqlite3';
import { faultOf } from './faultOf.ts';
import { migrate } from './migrate.ts';
import { StoreFault } from './storeFault.ts';

export type StoreOptions = {
  /** Longest wait for another process that writes, in ms, 0 or more; default 2000. Its thread does nothing else meanwhile. */
  readonly busyMs?: number;
  /** Pages of the write-ahead log after which it is moved into the file, 1 or more; default 1000. */
  readonly checkpointPages?: number;
};

/** "oven" in ASCII, in the four bytes that SQLite keeps for saying whose file it is. */
export const APPLICATION_ID = 0x6f76656e;

/** The header as in "Database File Format" (sqlite.org), section 1.3: the magic text, and the application id at byte 68. */
const HEADER_BYTES = 100;
const MAGIC = 'SQLite format 3\0';
const APPLICATION_ID_AT = 68;

/** The log may have grown with one large change; after that this is what is kept of it. */
const LOG_BYTES_KEPT = 16 * 1024 * 1024;

function headerOf(file: string): Buffer | null {
  let descriptor: number;
  try {
    descriptor = openSync(file, 'r');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
  try {
    const header = Buffer.alloc(HEADER_BYTES);
    return header.subarray(0, readSync(descriptor, header, 0, HEADER_BYTES, 0));
  } finally {
    closeSync(descriptor);
  }
}

/** Read as bytes: to open a file with SQLite can already change it, when its last writer was killed. */
function refuseForeign(file: string): void {
  let header: Buffer | null;
  try {
    header = headerOf(file);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new StoreFault(
      'CANNOT_OPEN',
      `The store ${file} cannot be read: ${why}. Name a file, in a folder you may read.`,
      error,
    );
  }
  if (header === null || header.length === 0) return;
  const isOurs =
    header.length === HEADER_BYTES &&
    header.toString('latin1', 0, MAGIC.length) === MAGIC &&
    header.readUInt32BE(APPLICATION_ID_AT) === APPLICATION_ID;
  if (!isOurs)
    throw new StoreFault('NOT_A_STORE', `${file} is no store of ovenward; it was not changed. Name another file for the store.`);
}

function setUp(db: Database.Database, { checkpointPages = 1000 }: StoreOptions): void {
  // First thing of all, before the log is there: so the file itself says from its first page on whose it is.
  if (db.pragma('page_count', { simple: true }) === 0) db.pragma(`application_id = ${APPLICATION_ID}`);
  if (db.pragma('application_id', { simple: true }) !== APPLICATION_ID)
    throw new StoreFault('NOT_A_STORE', `${db.name} is no store of ovenward. Name another file for the store.`);
  const mode = db.pragma('journal_mode = WAL', { simple: true });
  if (mode !== 'wal' && !db.memory)
    throw new StoreFault(
      'CANNOT_OPEN',
      `The store ${db.name} cannot keep a write-ahead log (it stays at ${String(mode)}). Put it on a disk of this machine.`,
    );
  // better-sqlite3 is built with NORMAL for this mode, which may lose the last commits when the power goes.
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('trusted_schema = OFF');
  db.pragma(`wal_autocheckpoint = ${checkpointPages}`);
  db.pragma(`journal_size_limit = ${LOG_BYTES_KEPT}`);
}

/** @param file - its path, or ":memory:". */
export function openDatabase(file: string, options: StoreOptions = {}): Database.Database {
  if (file.trim() === '') throw new StoreFault('CANNOT_OPEN', 'The store needs the name of a file.');
  // better-sqlite3 trims names; what is looked at here must be what is opened there.
  const path = file === ':memory:' ? file : resolve(file.trim());
  if (path !== ':memory:') refuseForeign(path);
  let db: Database.Database | undefined;
  try {
    db = new Database(path, { timeout: options.busyMs ?? 2000 });
    setUp(db, options);
    migrate(db);
    return db;
  } catch (error) {
    db?.close();
    if (error instanceof TypeError)
      throw new StoreFault('CANNOT_OPEN', `The store ${path} cannot be opened: ${error.message}. Make its folder first.`, error);
    throw faultOf(error, path);
  }
}
