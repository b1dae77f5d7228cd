// Work that was asked for and the keys of its requests. One part of the store, put together in openStore.ts.
import type { Database } from 'better-sqlite3';
import { fingerprintOf } from './fingerprintOf.ts';
import type { KeyRecord, Store, WorkRecord } from './store.ts';
import { StoreFault } from './storeFault.ts';

const WORK = 'id, kind, state, asked_at AS askedAt, ended_at AS endedAt, asked, answer';
const IS_OPEN = "state IN ('waiting', 'running')";

type Changes = Parameters<Store['changeWork']>[1];
type Ending = Pick<WorkRecord, 'id' | 'state' | 'endedAt'>;
type Answering = Pick<WorkRecord, 'id' | 'answer'> & { readonly sha256: string | null };

export type WorkTable = {
  readonly add: (work: WorkRecord, key: KeyRecord | undefined) => boolean;
  readonly change: (id: string, changes: Changes) => void;
  readonly find: (id: string) => WorkRecord | null;
  readonly open: () => readonly WorkRecord[];
  readonly key: (key: string) => KeyRecord | null;
  readonly forget: (before: string) => number;
};

function sha256Of(answer: string | null): string | null {
  return answer === null ? null : fingerprintOf(answer);
}

function changing(db: Database): WorkTable['change'] {
  const standing = db.prepare<[string], Ending>('SELECT id, state, ended_at AS endedAt FROM work WHERE id = ?');
  const end = db.prepare<[Ending]>('UPDATE work SET state = @state, ended_at = @endedAt WHERE id = @id');
  const answerIt = db.prepare<[Answering]>('UPDATE work SET answer = @answer, answer_sha256 = @sha256 WHERE id = @id');
  const change = db.transaction((id: string, { state, endedAt, answer }: Changes) => {
    const before = standing.get(id);
    if (before === undefined) throw new StoreFault('REFUSED', `There is no work ${id} to change.`);
    end.run({ id, state: state ?? before.state, endedAt: endedAt === undefined ? before.endedAt : endedAt });
    if (answer !== undefined) answerIt.run({ id, answer, sha256: sha256Of(answer) });
  });
  return (id, changes) => change.immediate(id, changes);
}

function forgetting(db: Database): WorkTable['forget'] {
  const forgetWork = db.prepare<[string]>(
    `DELETE FROM work WHERE NOT (${IS_OPEN}) AND asked_at < ?
     AND NOT EXISTS (SELECT 1 FROM posted WHERE plan_sha256 = work.answer_sha256)`,
  );
  const forgetKeys = db.prepare<[string]>('DELETE FROM request_key WHERE saved_at < ?');
  const forget = db.transaction((before: string) => forgetWork.run(before).changes + forgetKeys.run(before).changes);
  return (before) => forget.immediate(before);
}

export function workTable(db: Database): WorkTable {
  const one = db.prepare<[string], WorkRecord>(`SELECT ${WORK} FROM work WHERE id = ?`);
  const allOpen = db.prepare<[], WorkRecord>(`SELECT ${WORK} FROM work WHERE ${IS_OPEN} ORDER BY asked_at, number`);
  const oneKey = db.prepare<[string], KeyRecord>(
    'SELECT key, fingerprint, saved_at AS savedAt, location FROM request_key WHERE key = ?',
  );
  const addKey = db.prepare<[KeyRecord]>(
    `INSERT INTO request_key (key, fingerprint, saved_at, location) VALUES (@key, @fingerprint, @savedAt, @location)
     ON CONFLICT (key) DO NOTHING`,
  );
  const addWork = db.prepare<[WorkRecord & { readonly sha256: string | null }]>(
    `INSERT INTO work (id, kind, state, asked_at, ended_at, asked, answer, answer_sha256)
     VALUES (@id, @kind, @state, @askedAt, @endedAt, @asked, @answer, @sha256)`,
  );
  const add = db.transaction((work: WorkRecord, key: KeyRecord | undefined) => {
    if (key !== undefined && addKey.run(key).changes === 0) return false;
    addWork.run({ ...work, sha256: sha256Of(work.answer) });
    return true;
  });
  return {
    add: (work, key) => add.immediate(work, key),
    change: changing(db),
    find: (id) => one.get(id) ?? null,
    open: () => allOpen.all(),
    key: (key) => oneKey.get(key) ?? null,
    forget: forgetting(db),
  };
}
