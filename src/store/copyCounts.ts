// What a copy of the store holds, counted in the copy itself without changing it. Used by `ovenward backup`.
import Database from 'better-sqlite3';
import { faultOf } from './faultOf.ts';
import { faultsIn } from './faultsIn.ts';

export type CopyCounts = {
  /** Names, not their revisions. */
  readonly scenarios: number;
  /** Plans that were made, posted or not. */
  readonly plans: number;
  /** Days that a plan was posted for. */
  readonly postedDays: number;
  /** What the copy finds wrong in itself. */
  readonly faults: readonly string[];
};

export function copyCounts(file: string): CopyCounts {
  try {
    const db = new Database(file, { readonly: true, fileMustExist: true });
    const count = (what: string): number => db.prepare<[], { readonly n: number }>(`SELECT ${what} AS n`).get()?.n ?? 0;
    try {
      return {
        scenarios: count('(SELECT count(DISTINCT name) FROM scenario)'),
        plans: count("(SELECT count(*) FROM work WHERE kind = 'plan' AND answer IS NOT NULL)"),
        postedDays: count('(SELECT count(DISTINCT date) FROM posted)'),
        faults: faultsIn(db),
      };
    } finally {
      db.close();
    }
  } catch (error) {
    throw faultOf(error, file);
  }
}
