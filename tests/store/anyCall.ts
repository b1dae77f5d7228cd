// Calls of a store with few names and many kinds of text, so that they meet each other. Used by openStore.test.ts.
import fc from 'fast-check';
import { WORK_KINDS, WORK_STATES, type WorkRecord } from '../../src/store/store.ts';
import type { Asked } from './memoryStore.ts';

export type Call = (store: Asked) => Promise<unknown>;

/** Any Unicode text, NUL and all; a lone half of a pair is no text. */
const text = fc.oneof(
  fc.constantFrom('', 'one', 'two'),
  fc.string({ unit: 'binary' }),
  fc.constant('\0between\0'),
  fc.string({ unit: 'grapheme' }),
);
const name = fc.constantFrom('saturday', 'SATURDAY', 'žito', "'; DROP TABLE scenario; --", '🥨', '\uffee');
const id = fc.constantFrom('w1', 'w2', 'w3', 'w4');
const date = fc.constantFrom('2026-05-16', '2026-05-17');
const instant = fc.integer({ min: 0, max: 5 }).map((minute) => `2026-05-16T04:0${minute}:00.000Z`);
const isRevision = fc.oneof(fc.constant(undefined), fc.integer({ min: 0, max: 3 }));
const revision = fc.oneof(fc.constant(undefined), fc.integer({ min: 1, max: 3 }));
const answer = fc.oneof(fc.constant(null), fc.constantFrom('plan a', 'plan b'), text);
const state = fc.constantFrom(...WORK_STATES);
const endedAt = fc.oneof(fc.constant(null), instant);

const scenario = fc.record({
  name,
  savedAt: instant,
  mediaType: fc.constantFrom('application/json' as const, 'application/yaml' as const),
  text,
});
const work: fc.Arbitrary<WorkRecord> = fc.record({
  id,
  kind: fc.constantFrom(...WORK_KINDS),
  state,
  askedAt: instant,
  endedAt,
  asked: text,
  answer,
});
const key = fc.record({ key: fc.constantFrom('k1', 'k2'), fingerprint: text, savedAt: instant, location: text });
const posted = fc.record({
  date,
  postedAt: instant,
  timeZone: fc.constantFrom('Europe/Prague', 'UTC'),
  scenario: text,
  plan: fc.oneof(fc.constantFrom('plan a', 'plan b'), text),
  pages: fc.array(text, { maxLength: 3 }),
});
const changes = fc.record({ state, endedAt, answer }, { requiredKeys: [] });

/** A call that prints as what it is when it is part of a failure. */
function call<Words extends readonly unknown[]>(
  method: keyof Asked,
  words: fc.Arbitrary<Words>,
  make: (store: Asked, ...words: Words) => Promise<unknown>,
): fc.Arbitrary<Call> {
  return words.map((given) =>
    Object.assign((store: Asked) => make(store, ...given), {
      [fc.toStringMethod]: () => `${method}(${given.map((word) => JSON.stringify(word)).join(', ')})`,
    }),
  );
}

export const anyCall: fc.Arbitrary<Call> = fc.oneof(
  call('saveScenario', fc.tuple(scenario, isRevision), (store, ...words) => store.saveScenario(...words)),
  call('scenario', fc.tuple(name, revision), (store, ...words) => store.scenario(...words)),
  call('addWork', fc.tuple(work), (store, given) => store.addWork(given)),
  call('addWork', fc.tuple(work, key), (store, ...words) => store.addWork(...words)),
  call('changeWork', fc.tuple(id, changes), (store, ...words) => store.changeWork(...words)),
  call('post', fc.tuple(posted, isRevision), (store, ...words) => store.post(...words)),
  call('posted', fc.tuple(date, revision), (store, ...words) => store.posted(...words)),
  call('tell', fc.tuple(date, instant, fc.array(text, { maxLength: 3 })), (store, ...words) => store.tell(...words)),
  call('forget', fc.tuple(instant), (store, before) => store.forget(before)),
);

/** Everything that can be read, under every name there may be. */
export async function allOf(store: Asked): Promise<unknown> {
  const names = ['saturday', 'SATURDAY', 'žito', "'; DROP TABLE scenario; --", '🥨', '\uffee'];
  const dates = ['2026-05-16', '2026-05-17'];
  return {
    list: await store.scenarios(),
    scenarios: await Promise.all(names.map(async (each) => [await store.scenario(each), await store.scenarioHistory(each)])),
    works: await Promise.all(['w1', 'w2', 'w3', 'w4'].map((each) => store.work(each))),
    open: await store.openWork(),
    keys: await Promise.all(['k1', 'k2'].map((each) => store.key(each))),
    posted: await Promise.all(
      dates.map(async (each) => [await store.posted(each), await store.postedHistory(each), await store.happened(each)]),
    ),
    last: await store.lastPosted(),
  };
}
