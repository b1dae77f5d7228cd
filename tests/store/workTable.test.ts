// Work and keys in the store: accepted once, changed in part, taken up again, forgotten only when nobody needs it.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openStore } from '../../src/store/openStore.ts';
import type { Store } from '../../src/store/store.ts';
import { posted, work } from './samples.ts';

const key = { key: 'k', fingerprint: 'f', savedAt: '2026-05-16T04:03:00.000Z', location: '/v1/plans/w1' };
const ended = { state: 'done', endedAt: '2026-05-16T04:04:00.000Z' } as const;
const later = '2026-05-17T00:00:00.000Z';

let store: Store;
beforeEach(async () => {
  store = await openStore(':memory:');
});
afterEach(() => store.close());

test('with a key that was taken nothing is accepted; the key leads to the first', async () => {
  expect(await store.addWork(work('w1'), key)).toBe(true);
  expect(await store.addWork(work('w2'), { ...key, location: '/v1/plans/w2' })).toBe(false);
  expect(await store.work('w2')).toBeNull();
  expect(await store.key('k')).toEqual(key);
  expect(await store.key('other')).toBeNull();
});

test('an id that is there is refused, and the key that came with it is not taken', async () => {
  await store.addWork(work('w1', { asked: 'first' }));
  await expect(store.addWork(work('w1', { asked: 'second' }), key)).rejects.toMatchObject({ code: 'REFUSED' });
  expect((await store.work('w1'))?.asked).toBe('first');
  expect(await store.key('k')).toBeNull();
});

test('a change leaves alone what it does not name, and can take an answer back', async () => {
  await store.addWork(work('w1'));
  await store.changeWork('w1', { answer: 'best so far' });
  expect(await store.work('w1')).toEqual(work('w1', { answer: 'best so far' }));
  await store.changeWork('w1', ended);
  expect(await store.work('w1')).toEqual(work('w1', { ...ended, answer: 'best so far' }));
  await store.changeWork('w1', { answer: null, endedAt: null });
  expect(await store.work('w1')).toEqual(work('w1', { state: 'done' }));
});

test('a change of what is not there rejects', async () => {
  await expect(store.changeWork('w1', ended)).rejects.toMatchObject({ name: 'StoreFault', code: 'REFUSED' });
});

test('what has not ended is taken up oldest first, and of one instant in the order it came', async () => {
  await store.addWork(work('young', { askedAt: later }));
  for (const id of ['b', 'a', 'gone']) await store.addWork(work(id, { state: id === 'a' ? 'running' : 'waiting' }));
  await store.changeWork('gone', { state: 'stopped' });
  expect((await store.openWork()).map(({ id }) => id)).toEqual(['b', 'a', 'young']);
});

test('forgets ended work and keys from before; keeps what runs, what is posted and what is asked at that instant', async () => {
  await store.addWork(work('old', { ...ended, answer: 'plan a' }), key);
  await store.addWork(work('posted', { ...ended, answer: 'plan b' }));
  await store.addWork(work('no answer', { ...ended, state: 'failed' }));
  await store.addWork(work('running', { state: 'running' }));
  await store.addWork(work('young', { ...ended, askedAt: later }), { ...key, key: 'young', savedAt: later });
  await store.post(posted('plan b'));
  await store.post(posted('plan c'));
  expect(await store.forget(later)).toBe(3);
  const ids = ['old', 'posted', 'no answer', 'running', 'young'];
  const found = await Promise.all(ids.map((id) => store.work(id)));
  expect(found.flatMap((each) => each?.id ?? [])).toEqual(['posted', 'running', 'young']);
  expect([await store.key('k'), (await store.key('young'))?.key]).toEqual([null, 'young']);
  expect((await store.posted('2026-05-16', 1))?.plan).toBe('plan b');
  expect(await store.forget(later)).toBe(0);
});
