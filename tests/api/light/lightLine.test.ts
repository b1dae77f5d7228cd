// The line before the light threads, around work that lasts until it is let go: turns, bounds, clients that leave, faults, a stop.
import { expect, test } from 'vitest';
import { ClientGone } from '../../../src/api/goneSignal.ts';
import { LightLine } from '../../../src/api/light/lightLine.ts';
import type { Done, Given, LightKind } from '../../../src/api/light/lightWork.ts';
import { Problem } from '../../../src/api/problem.ts';

const stays = new AbortController().signal;

type Held = { readonly given: unknown; readonly letGo: () => void; readonly fail: (fault: unknown) => void };

function held(threads: number, places: number) {
  const begun: Held[] = [];
  const run = <K extends LightKind>(_kind: K, given: Given<K>): Promise<Done<K>> =>
    new Promise((resolve, reject) => {
      const refusal = { status: 422, detail: 'wrong', errors: [], headers: { Allow: 'GET' } } as const;
      begun.push({ given, letGo: () => resolve({ ok: false, refusal }), fail: reject });
    });
  const line = new LightLine({ run, threads, places });
  const ended: string[] = [];
  const ask = (text: string, client = 'till', gone: AbortSignal = stays): Promise<unknown> =>
    line.do('check', { text }, { client, gone }).then(
      () => 'done',
      (error: unknown) => {
        ended.push(text);
        return error;
      },
    );
  const texts = (): readonly unknown[] => begun.map(({ given }) => given);
  return { line, begun, ended, ask, texts };
}

const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

test('as many at once as there are threads, the others by turns of their clients, and a refusal comes back as the problem it is', async () => {
  const { line, begun, ask, texts } = held(2, 10);
  const all = ['a1', 'a2', 'a3', 'a4', 'b1'].map((text) => ask(text, text[0]));
  await settled();
  expect(texts()).toEqual([{ text: 'a1' }, { text: 'a2' }]);
  expect(line.waiting).toBe(3);
  for (let next = 0; next < 5; next += 1) {
    begun[next]?.letGo();
    await settled();
  }
  expect(texts()).toEqual(['a1', 'a2', 'a3', 'b1', 'a4'].map((text) => ({ text })));
  for (const answer of await Promise.all(all)) {
    if (!(answer instanceof Problem)) throw new Error('no problem');
    expect([answer.status, answer.message, answer.headers]).toEqual([422, 'wrong', { Allow: 'GET' }]);
  }
});

test('whoever finds the line full is refused at once, and let in when there is a place again', async () => {
  const { begun, ask, texts } = held(1, 1);
  const first = ask('first');
  const second = ask('second');
  const refused = await ask('third');
  if (!(refused instanceof Problem)) throw new Error('no problem');
  expect([refused.status, refused.headers]).toEqual([503, { 'Retry-After': '1' }]);
  begun[0]?.letGo();
  await first;
  const fourth = ask('fourth');
  await settled();
  begun[1]?.letGo();
  await second;
  await settled();
  begun[2]?.letGo();
  await fourth;
  expect(texts()).toEqual(['first', 'second', 'fourth'].map((text) => ({ text })));
});

test('who has gone is not served, and who leaves the line gives up the place', async () => {
  const { line, begun, ask, texts } = held(1, 1);
  const first = ask('first');
  const leaves = new AbortController();
  const second = ask('second', 'till', leaves.signal);
  await settled();
  leaves.abort();
  expect(await second).toBeInstanceOf(ClientGone);
  expect(line.waiting).toBe(0);
  expect(await ask('gone before it came', 'till', leaves.signal)).toBeInstanceOf(ClientGone);
  const third = ask('third');
  begun[0]?.letGo();
  await first;
  await settled();
  begun[1]?.letGo();
  await third;
  expect(texts()).toEqual([{ text: 'first' }, { text: 'third' }]);
});

test('a fault goes to whoever waits for it, and the thread to the next', async () => {
  const { begun, ask } = held(1, 5);
  const fault = new RangeError('out of memory');
  const first = ask('first');
  const second = ask('second');
  await settled();
  begun[0]?.fail(fault);
  expect(await first).toBe(fault);
  await settled();
  begun[1]?.letGo();
  expect(await second).toBeInstanceOf(Problem);
});

test('a line that is closed refuses who waits and who comes, and lets end what runs', async () => {
  const { line, begun, ask, ended } = held(1, 5);
  const first = ask('first');
  const second = ask('second');
  await settled();
  line.close();
  for (const refused of [await second, await ask('third')]) {
    if (!(refused instanceof Problem)) throw new Error('no problem');
    expect([refused.status, refused.headers]).toEqual([503, { 'Retry-After': '10' }]);
  }
  expect(ended).toEqual(['second', 'third']);
  begun[0]?.letGo();
  expect(await first).toBeInstanceOf(Problem);
  expect(ended).toEqual(['second', 'third', 'first']);
});

test('what a thread is ended at with the service is refused, and is no fault', async () => {
  const { line, begun, ask } = held(1, 5);
  const running = ask('running');
  await settled();
  line.close();
  begun[0]?.fail(new Error('Terminating worker thread'));
  const refused = await running;
  if (!(refused instanceof Problem)) throw new Error('no problem');
  expect([refused.status, refused.headers]).toEqual([503, { 'Retry-After': '10' }]);
});
