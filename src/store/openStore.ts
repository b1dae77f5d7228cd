// The embedded store: one SQLite file, opened or made. Used by cli; api is handed what it returns. docs/store.md tells what it promises.
import { statSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { backUp } from './backUp.ts';
import { faultOf } from './faultOf.ts';
import { faultsIn } from './faultsIn.ts';
import { happenedTable } from './happenedTable.ts';
import { openDatabase, type StoreOptions } from './openDatabase.ts';
import { postedTable } from './postedTable.ts';
import { scenarioTable } from './scenarioTable.ts';
import type { Store } from './store.ts';
import { StoreFault } from './storeFault.ts';
import { workTable } from './workTable.ts';

/** Which file lies at this path now; null when none does. */
function fileAt(path: string): string | null {
  const found = statSync(path, { throwIfNoEntry: false });
  return found === undefined ? null : `${found.dev}:${found.ino}`;
}

/** What keeps the promises about the store as a whole: readiness, faults, copies, the end. */
function keeping(db: Database): Pick<Store, 'isReady' | 'faults' | 'backup' | 'close'> {
  const opened = db.memory ? null : fileAt(db.name);
  const row = db.prepare('SELECT count(*) FROM sqlite_schema');
  const copies = new Set<Promise<void>>();
  return {
    isReady: async () => {
      try {
        row.get();
        // A file that was taken away can still be written to, and all of it would be lost.
        return db.memory || fileAt(db.name) === opened;
      } catch {
        return false;
      }
    },
    faults: async () => {
      try {
        return faultsIn(db);
      } catch (error) {
        const fault = faultOf(error, db.name);
        // Too damaged to be looked through is a finding too.
        if (fault instanceof StoreFault && fault.code === 'DAMAGED') return [fault.message];
        throw fault;
      }
    },
    backup: async (file) => {
      // The copy is read by a connection of its own, which would not notice.
      if (!db.open) throw new StoreFault('CLOSED', `The store ${db.name} has been closed.`);
      const copy = backUp(db, file);
      copies.add(copy);
      try {
        await copy;
      } catch (error) {
        throw faultOf(error, db.name);
      } finally {
        copies.delete(copy);
      }
    },
    close: async () => {
      await Promise.allSettled(copies);
      try {
        db.close();
      } catch (error) {
        throw faultOf(error, db.name);
      }
    },
  };
}

/** The store over a database that is open and migrated. */
export function storeOver(db: Database): Store {
  const scenarios = scenarioTable(db);
  const works = workTable(db);
  const days = postedTable(db);
  const told = happenedTable(db);
  /** SQLite is done when its call returns, and nothing runs beside it: a promise is made of that here, once. */
  const promised =
    <Words extends readonly unknown[], Answer>(act: (...words: Words) => Answer) =>
    async (...words: Words): Promise<Answer> => {
      try {
        return act(...words);
      } catch (error) {
        throw faultOf(error, db.name);
      }
    };
  return {
    saveScenario: promised((scenario, isRevision?: number) => scenarios.save(scenario, isRevision)),
    scenario: promised((name, revision?: number) => scenarios.find(name, revision)),
    scenarios: promised(scenarios.list),
    scenarioHistory: promised(scenarios.history),
    addWork: promised((work, key?) => works.add(work, key)),
    changeWork: promised(works.change),
    work: promised(works.find),
    openWork: promised(works.open),
    key: promised(works.key),
    post: promised((posted, isRevision?: number) => days.post(posted, isRevision)),
    posted: promised((date, revision?: number) => days.find(date, revision)),
    postedHistory: promised(days.history),
    lastPosted: promised(days.last),
    tell: promised(told.tell),
    happened: promised(told.list),
    forget: promised(works.forget),
    ...keeping(db),
  };
}

/**
 * Opens the store in this file, or makes it. Rejects with a StoreFault when the file is not ours, is of a newer version, or cannot be opened.
 *
 * @param file - its path, or ":memory:" for one that is gone when it is closed.
 */
export async function openStore(file: string, options: StoreOptions = {}): Promise<Store> {
  const db = openDatabase(file, options);
  try {
    return storeOver(db);
  } catch (error) {
    db.close();
    throw faultOf(error, db.name);
  }
}
