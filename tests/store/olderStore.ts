// A store as an earlier version of it was, with rows in each of its tables. Used by migrate.test.ts and by the killed writer.
import Database from 'better-sqlite3';
import { MIGRATIONS } from '../../src/store/migrations.ts';
import { APPLICATION_ID } from '../../src/store/openDatabase.ts';
import type { Store } from '../../src/store/store.ts';

type Rows = {
  /** The version that brought their table. */
  readonly since: number;
  /** As they were written then. */
  readonly sql: string;
  /** Whether today's store hands them out, all of them. */
  readonly found: (store: Store) => Promise<boolean>;
};

export const ROWS: readonly Rows[] = [
  {
    since: 1,
    sql: `INSERT INTO scenario (name, revision, saved_at, media_type, text) VALUES
      ('old', 1, 't', 'application/yaml', 'first'), ('old', 2, 't', 'application/json', 'second')`,
    found: async (store) =>
      (await store.scenario('old', 1))?.text === 'first' && (await store.scenario('old'))?.text === 'second',
  },
  {
    since: 2,
    sql: `INSERT INTO work (id, kind, state, asked_at, ended_at, asked, answer, answer_sha256)
      VALUES ('old', 'fit', 'waiting', 't', NULL, '{"old":1}', NULL, NULL);
      INSERT INTO request_key (key, fingerprint, saved_at, location) VALUES ('old', 'f', 't', '/old')`,
    found: async (store) =>
      (await store.work('old'))?.asked === '{"old":1}' &&
      (await store.openWork()).some(({ id }) => id === 'old') &&
      (await store.key('old'))?.location === '/old',
  },
  {
    since: 3,
    sql: `INSERT INTO posted (date, revision, posted_at, time_zone, scenario, plan, plan_sha256)
      VALUES ('2000-01-01', 1, 't', 'UTC', '{}', 'old plan', 'sha');
      INSERT INTO posted_page (date, revision, number, svg) VALUES ('2000-01-01', 1, 1, '<svg/>')`,
    found: async (store) => {
      const posted = await store.posted('2000-01-01', 1);
      return posted?.plan === 'old plan' && posted.pages.join() === '<svg/>';
    },
  },
  {
    since: 4,
    sql: "INSERT INTO happened (date, number, told_at, event) VALUES ('2000-01-01', 1, 't', 'old event')",
    found: async (store) => (await store.happened('2000-01-01'))[0]?.event === 'old event',
  },
];

/** @param version - 0 for a file that says whose it is and holds nothing. */
export function olderStore(file: string, version: number): void {
  const db = new Database(file);
  db.pragma(`application_id = ${APPLICATION_ID}`);
  db.pragma('journal_mode = WAL');
  for (const { to, sql } of MIGRATIONS.filter((step) => step.to <= version)) {
    db.exec(sql);
    db.pragma(`user_version = ${to}`);
  }
  for (const { sql } of ROWS.filter(({ since }) => since <= version)) db.exec(sql);
  db.close();
}
