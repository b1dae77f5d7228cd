// `backup` of a real store that is open and written to meanwhile.
import { mkdtempSync, openSync, readFileSync, rmSync, statSync, writeFileSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { openStore } from '../../src/store/openStore.ts';
import type { Store } from '../../src/store/store.ts';
import { partsFor, surroundingsFor } from './fakes.ts';

const savedAt = '2026-05-15T20:00:00.000Z';
let folder: string;
let store: Store;
const at = (name: string): string => join(folder, name);
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'backing-'));
  store = await openStore(at('store.db'));
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true });
});

async function backup(
  file: string,
  env: Readonly<Record<string, string>> = { OVENWARD_STORE: at('store.db') },
  words: readonly string[] = [],
) {
  const surroundings = surroundingsFor({ env });
  const code = await run(['backup', file, ...words], async () => partsFor(), surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

async function fill(): Promise<void> {
  for (const name of ['saturday', 'sunday', 'saturday'])
    await store.saveScenario({ name, savedAt, mediaType: 'application/yaml', text: `name: ${name} ${Math.PI}` });
  const work = { kind: 'plan', state: 'done', askedAt: savedAt, endedAt: savedAt, asked: '{}' } as const;
  await store.addWork({ ...work, id: 'with-an-answer', answer: '{"plan":1}' });
  await store.addWork({ ...work, id: 'without', state: 'failed', answer: null });
  const posted = { postedAt: savedAt, timeZone: 'Europe/Lisbon', scenario: '{}', plan: '{}', pages: ['<svg/>'] };
  for (const date of ['2026-05-16', '2026-05-17', '2026-05-17']) await store.post({ ...posted, date });
}

test('a copy while the store is open, how large it is and what is in it', async () => {
  await fill();
  const { code, out } = await backup(at('copy.db'));
  expect(code).toBe(0);
  expect(out).toBe(
    `${at('copy.db')}  ${Math.ceil(statSync(at('copy.db')).size / 1000)} kB: 2 scenarios, 1 plan, 2 posted days.\n`,
  );
  const copy = await openStore(at('copy.db'));
  expect(await copy.posted('2026-05-17')).toEqual(await store.posted('2026-05-17'));
  await copy.close();
});

test('--store wins over the variable', async () => {
  const { code } = await backup(at('copy.db'), { OVENWARD_STORE: at('none.db') }, ['--store', at('store.db')]);
  expect(code).toBe(0);
});

test('a store that is not there is not made', async () => {
  const { code, err } = await backup(at('copy.db'), { OVENWARD_STORE: at('none.db') });
  expect(code).toBe(2);
  expect(err).toContain('STORE_MISSING');
  expect(statSync(at('none.db'), { throwIfNoEntry: false })).toBeUndefined();
});

test.each(['store.db', 'store.db-wal', 'no-folder/copy.db', '.'])('not to %s', async (name) => {
  await fill();
  const before = await store.posted('2026-05-16');
  const { code, err } = await backup(at(name));
  expect(code).toBe(2);
  expect(err).toContain('STORE_REFUSED');
  expect(await store.posted('2026-05-16')).toEqual(before);
});

test('what is no store of ours is not copied', async () => {
  writeFileSync(at('letter.txt'), 'Dear baker');
  const { code, err } = await backup(at('copy.db'), { OVENWARD_STORE: at('letter.txt') });
  expect(code).toBe(2);
  expect(err).toContain('STORE_REFUSED');
});

test('a damaged store does not take the place of a sound copy', async () => {
  await fill();
  await backup(at('copy.db'));
  const before = readFileSync(at('copy.db'));
  await store.close();
  // The middle of the file, past its first pages: tables and indexes.
  const file = openSync(at('store.db'), 'r+');
  writeSync(file, Buffer.alloc(12_000, 7), 0, 12_000, 8192);
  const { code, err } = await backup(at('copy.db'));
  expect(code).toBe(2);
  expect(err).toMatch(/STORE_(DAMAGED|REFUSED)/);
  expect(readFileSync(at('copy.db')).equals(before)).toBe(true);
  store = await openStore(at('other.db'));
});
