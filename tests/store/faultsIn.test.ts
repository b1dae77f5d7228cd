// The store finds what is wrong in itself: a page overwritten on disk, a reference that leads nowhere.
import { closeSync, mkdtempSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { faultsIn } from '../../src/store/faultsIn.ts';
import { openDatabase } from '../../src/store/openDatabase.ts';
import { openStore, storeOver } from '../../src/store/openStore.ts';
import { posted, scenario } from './samples.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'faults-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('a page that belongs to no posted plan is a fault', () => {
  const db = openDatabase(':memory:');
  expect(faultsIn(db)).toEqual([]);
  db.pragma('foreign_keys = OFF');
  db.exec("INSERT INTO posted_page (date, revision, number, svg) VALUES ('2026-05-16', 7, 1, '<svg/>')");
  expect(faultsIn(db)).toEqual(['row 1 of posted_page belongs to no row of posted']);
  db.close();
});

test('with any one page of the file overwritten, faults are found or the store is not opened', async () => {
  const pageBytes = 4096;
  const made = async (file: string): Promise<number> => {
    const db = openDatabase(file);
    const store = storeOver(db);
    await store.saveScenario(scenario('flour '.repeat(3000)));
    await store.post(posted('plan', ['<svg/>']));
    await store.close();
    return statSync(file).size / pageBytes;
  };
  const pages = await made(join(folder, 'count.db'));
  expect(pages).toBeGreaterThan(10);
  // The pages in the middle of a long text hold bytes that mean nothing to SQLite, except their first four: the next page.
  for (const page of [1, 2, Math.floor(pages / 2), pages - 1]) {
    const file = join(folder, `${page}.db`);
    await made(file);
    const descriptor = openSync(file, 'r+');
    writeSync(descriptor, Buffer.alloc(pageBytes, 0xff), 0, pageBytes, page * pageBytes);
    closeSync(descriptor);
    try {
      const store = await openStore(file);
      const faults = await store.faults();
      await store.close();
      expect(faults.length, `page ${page + 1}`).toBeGreaterThan(0);
    } catch (error) {
      expect(error, `page ${page + 1}`).toMatchObject({ name: 'StoreFault', code: 'DAMAGED' });
    }
  }
});
