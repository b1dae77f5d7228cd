// A consistent copy of the store in one file, made while others read and write. Used by openStore.ts.
import { closeSync, existsSync, fsyncSync, mkdtempSync, openSync, realpathSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { StoreFault } from './storeFault.ts';

/** Files SQLite keeps beside a database; with the wrong one beside it, a database is damaged ("How To Corrupt An SQLite Database File"). */
const BESIDE = ['-wal', '-shm', '-journal'];

function isSameFile(one: string, other: string): boolean {
  if (one === other) return true;
  const [a, b] = [one, other].map((file) => statSync(file, { throwIfNoEntry: false }));
  return a !== undefined && b !== undefined && a.dev === b.dev && a.ino === b.ino;
}

function refuse(says: string, cause?: unknown): StoreFault {
  return new StoreFault('NO_BACKUP_THERE', says, cause);
}

/** Where the copy goes, links in its folder followed; throws when it may not go there. */
function targetOf(db: Database.Database, file: string): string {
  const asked = resolve(file);
  const folder = dirname(asked);
  if (!existsSync(folder)) throw refuse(`The folder ${folder} does not exist. Make it first.`);
  const target = join(realpathSync(folder), basename(asked));
  if (!db.memory) {
    if (!existsSync(db.name))
      throw new StoreFault('CANNOT_OPEN', `The store ${db.name} is no longer there. Bring it back first.`);
    const store = realpathSync(db.name);
    if ([store, ...BESIDE.map((end) => store + end)].some((own) => isSameFile(own, target)))
      throw refuse(`${asked} is the store itself. Name another file for the backup.`);
  }
  if (statSync(target, { throwIfNoEntry: false })?.isDirectory()) throw refuse(`${asked} is a folder. Name a file in it.`);
  const left = BESIDE.find((end) => existsSync(target + end));
  if (left !== undefined)
    throw refuse(`Beside ${asked} lies ${basename(asked)}${left}: it is open somewhere or was left open. Name another file.`);
  return target;
}

function sync(path: string): void {
  const descriptor = openSync(path, 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

/** A reader of its own holds one moment fast; else each write of another connection would make the copy begin again. */
function snapshotOf(db: Database.Database): Database.Database {
  if (db.memory) return db;
  const reader = new Database(db.name, { readonly: true });
  try {
    reader.exec('BEGIN');
    reader.prepare('SELECT count(*) FROM sqlite_schema').get();
    return reader;
  } catch (error) {
    reader.close();
    throw error;
  }
}

async function copyTo(db: Database.Database, file: string): Promise<void> {
  const snapshot = snapshotOf(db);
  try {
    await snapshot.backup(file);
  } finally {
    if (snapshot !== db) snapshot.close();
  }
  // Without a log of its own the copy is one file, to be carried anywhere and read from disks that may not be written to.
  const copy = new Database(file);
  try {
    copy.pragma('journal_mode = DELETE');
  } finally {
    copy.close();
  }
  sync(file);
}

/** Renamed only when whole and on disk; what stood there before stays there until then. */
export async function backUp(db: Database.Database, file: string): Promise<void> {
  const target = targetOf(db, file);
  const beside = mkdtempSync(`${target}-`);
  try {
    const copy = join(beside, 'copy');
    await copyTo(db, copy);
    renameSync(copy, target);
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
  // Where folders cannot be opened, renaming is as durable as the system makes it.
  if (process.platform !== 'win32') sync(dirname(target));
}
