// The posted plans of each day with their pages. One part of the store, put together in openStore.ts.
import type { Database } from 'better-sqlite3';
import { fingerprintOf } from './fingerprintOf.ts';
import type { PostedEntry, PostedRecord } from './store.ts';

const ENTRY = 'date, revision, posted_at AS postedAt, time_zone AS timeZone';
const ROW = `${ENTRY}, scenario, plan`;

type Row = Omit<PostedRecord, 'pages'>;
type Page = { readonly svg: string };

export type PostedTable = {
  readonly post: (posted: Omit<PostedRecord, 'revision'>, isRevision: number | undefined) => PostedRecord | null;
  readonly find: (date: string, revision: number | undefined) => PostedRecord | null;
  readonly history: (date: string) => readonly PostedEntry[];
  readonly last: () => PostedEntry | null;
};

export function postedTable(db: Database): PostedTable {
  const last = db.prepare<[string], Row>(`SELECT ${ROW} FROM posted WHERE date = ? ORDER BY revision DESC LIMIT 1`);
  const one = db.prepare<[string, number], Row>(`SELECT ${ROW} FROM posted WHERE date = ? AND revision = ?`);
  const pagesOf = db.prepare<[string, number], Page>(
    'SELECT svg FROM posted_page WHERE date = ? AND revision = ? ORDER BY number',
  );
  const allOf = db.prepare<[string], PostedEntry>(`SELECT ${ENTRY} FROM posted WHERE date = ? ORDER BY revision DESC`);
  // In the order posted, not by its clock, which can be set back.
  const lastOfAll = db.prepare<[], PostedEntry>(`SELECT ${ENTRY} FROM posted ORDER BY number DESC LIMIT 1`);
  const lastRevision = db.prepare<[string], { readonly revision: number }>(
    'SELECT coalesce(max(revision), 0) AS revision FROM posted WHERE date = ?',
  );
  const add = db.prepare<[Row & { readonly sha256: string }]>(
    `INSERT INTO posted (date, revision, posted_at, time_zone, scenario, plan, plan_sha256)
     VALUES (@date, @revision, @postedAt, @timeZone, @scenario, @plan, @sha256)`,
  );
  const addPage = db.prepare<[string, number, number, string]>(
    'INSERT INTO posted_page (date, revision, number, svg) VALUES (?, ?, ?, ?)',
  );

  const post = db.transaction((posted: Omit<PostedRecord, 'revision'>, isRevision: number | undefined) => {
    const { date, postedAt, timeZone, scenario, plan, pages } = posted;
    const before = lastRevision.get(date)?.revision ?? 0;
    if (isRevision !== undefined && isRevision !== before) return null;
    const row: Row = { date, revision: before + 1, postedAt, timeZone, scenario, plan };
    add.run({ ...row, sha256: fingerprintOf(plan) });
    pages.forEach((svg, index) => {
      addPage.run(date, row.revision, index + 1, svg);
    });
    return { ...row, pages };
  });

  return {
    post: (posted, isRevision) => post.immediate(posted, isRevision),
    find: (date, revision) => {
      const row = revision === undefined ? last.get(date) : one.get(date, revision);
      // The pages of a revision never change, so they may be read in a second step.
      return row === undefined ? null : { ...row, pages: pagesOf.all(date, row.revision).map(({ svg }) => svg) };
    },
    history: (date) => allOf.all(date),
    last: () => lastOfAll.get() ?? null,
  };
}
