// What the database finds wrong in itself: pages, indexes, constraints and references. Used by openStore.ts.
import type { Database } from 'better-sqlite3';

export function faultsIn(db: Database): readonly string[] {
  const rows = db.prepare<[], { readonly integrity_check: string }>('PRAGMA integrity_check').all();
  const torn = rows.map((row) => row.integrity_check).filter((says) => says !== 'ok');
  type Reference = { readonly table: string; readonly rowid: number | null; readonly parent: string };
  const loose = db.prepare<[], Reference>('PRAGMA foreign_key_check').all();
  return [...torn, ...loose.map(({ table, rowid, parent }) => `row ${rowid} of ${table} belongs to no row of ${parent}`)];
}
