// What was told of a day while it ran, in the order told. One part of the store, put together in openStore.ts.
import type { Database } from 'better-sqlite3';
import type { HappenedRecord } from './store.ts';

export type HappenedTable = {
  readonly tell: (date: string, toldAt: string, events: readonly string[]) => readonly HappenedRecord[];
  readonly list: (date: string) => readonly HappenedRecord[];
};

export function happenedTable(db: Database): HappenedTable {
  const lastNumber = db.prepare<[string], { readonly number: number }>(
    'SELECT coalesce(max(number), 0) AS number FROM happened WHERE date = ?',
  );
  const add = db.prepare<[HappenedRecord]>(
    'INSERT INTO happened (date, number, told_at, event) VALUES (@date, @number, @toldAt, @event)',
  );
  const allOf = db.prepare<[string], HappenedRecord>(
    'SELECT date, number, told_at AS toldAt, event FROM happened WHERE date = ? ORDER BY number',
  );
  const tell = db.transaction((date: string, toldAt: string, events: readonly string[]) => {
    const before = lastNumber.get(date)?.number ?? 0;
    const told = events.map((event, index): HappenedRecord => ({ date, number: before + 1 + index, toldAt, event }));
    for (const record of told) add.run(record);
    return told;
  });
  return {
    tell: (date, toldAt, events) => tell.immediate(date, toldAt, events),
    list: (date) => allOf.all(date),
  };
}
