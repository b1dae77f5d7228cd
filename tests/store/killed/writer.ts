// Opens a store and writes to it until it is killed, telling each acknowledgement at once. A program of its own, started by round.ts.
import { writeSync } from 'node:fs';
import { openStore } from '../../../src/store/openStore.ts';
import type { Store } from '../../../src/store/store.ts';
import type { Told } from './acknowledgement.ts';
import { contentOf, instantOf, pagesOf } from './content.ts';

const [file = '', from = '0', checkpointPages = '1000'] = process.argv.slice(2);

// Straight into the pipe: what is in it survives us.
function tell(told: Told): void {
  writeSync(1, `${JSON.stringify(told)}\n`);
}

async function open(number: number): Promise<Store> {
  tell({ doing: 'opening', number });
  const store = await openStore(file, { checkpointPages: Number(checkpointPages) });
  tell({ done: 'opening', number });
  return store;
}

async function accept(store: Store, number: number): Promise<void> {
  const id = `w${number}`;
  tell({ doing: 'accepting', number });
  await store.addWork(
    {
      id,
      kind: 'plan',
      state: 'waiting',
      askedAt: instantOf(number),
      endedAt: null,
      asked: contentOf(number),
      answer: null,
    },
    { key: `k${number}`, fingerprint: 'f', savedAt: instantOf(number), location: `/${id}` },
  );
  await store.changeWork(id, { state: 'done', endedAt: instantOf(number), answer: contentOf(number) });
  tell({ done: 'accepting', number, id });
}

async function tellOfDay(store: Store, number: number): Promise<void> {
  const date = `day ${number % 2}`;
  tell({ doing: 'telling', number });
  const told = await store.tell(
    date,
    instantOf(number),
    [0, 1, 2].map((part) => `${part}/${contentOf(number)}`),
  );
  tell({ done: 'telling', number, date, first: told[0]?.number ?? 0 });
}

/** One thing after the other, so that every two of them follow each other sooner or later. */
async function write(store: Store, number: number): Promise<void> {
  if (number % 23 === 11) {
    tell({ doing: 'backing up', number });
    await store.backup(`${file}.copy`);
    return tell({ done: 'backing up', number });
  }
  if (number % 19 === 7) {
    tell({ doing: 'forgetting', number });
    await store.forget(instantOf(number - 20));
    return tell({ done: 'forgetting', number });
  }
  if (number % 4 === 0) return accept(store, number);
  if (number % 4 === 1) return tellOfDay(store, number);
  if (number % 4 === 2) {
    const name = `scenario ${number % 3}`;
    tell({ doing: 'saving', number });
    const scenario = { name, savedAt: instantOf(number), mediaType: 'application/yaml', text: contentOf(number) } as const;
    const saved = await store.saveScenario(scenario);
    return tell({ done: 'saving', number, name, revision: saved?.revision ?? 0 });
  }
  const date = `day ${number % 3}`;
  tell({ doing: 'posting', number });
  const day = { date, postedAt: instantOf(number), timeZone: 'UTC', scenario: contentOf(number) };
  const posted = await store.post({ ...day, plan: contentOf(number), pages: pagesOf(number) });
  tell({ done: 'posting', number, date, revision: posted?.revision ?? 0 });
}

let store = await open(Number(from));
for (let number = Number(from); ; number++) {
  await write(store, number);
  if (number % 29 !== 28) continue;
  tell({ doing: 'closing', number });
  await store.close();
  tell({ done: 'closing', number });
  store = await open(number);
}
