// What a killed service left, looked at in a copy, so that the next one finds what the death left and not what a look made of it.
// Used by manyRounds.ts and killed.test.ts.
import { cpSync, existsSync, rmSync } from 'node:fs';
import { z } from 'zod';
import { openStore } from '../../../src/store/openStore.ts';
import type { Store } from '../../../src/store/store.ts';
import type { Told } from '../../store/killed/acknowledgement.ts';
import { idOfKey, wrongIn } from '../../store/killed/wrongIn.ts';
import { WRITTEN } from './written.ts';

export type Left = {
  readonly wrong: readonly string[];
  /** Ids of work that is there though it was not acknowledged, by number. */
  readonly ids: ReadonlyMap<number, string>;
  /** Prices of the best plans so far of work that has not ended, by id. */
  readonly costs: ReadonlyMap<string, number>;
};

/** The log that belongs to it holds the newest; what all its users share while it is open is made anew. */
const WITH = ['', '-wal'];
const bestSchema = z.looseObject({ score: z.looseObject({ cost: z.number() }) });

async function leftIn(store: Store, told: readonly Told[]): Promise<Left> {
  const wrong = [...(await wrongIn(store, told, WRITTEN))];
  const acknowledged = new Set(told.flatMap((each) => ('done' in each && each.done === 'accepting' ? [each.number] : [])));
  const all = new Set<string | null>();
  const ids = new Map<number, string>();
  for (const each of told) {
    if (!('doing' in each) || each.doing !== 'accepting') continue;
    const id = await idOfKey(store, each.number);
    all.add(id);
    if (id !== null && !acknowledged.has(each.number)) ids.set(each.number, id);
  }
  const costs = new Map<string, number>();
  for (const { id, answer } of await store.openWork()) {
    if (!all.has(id)) wrong.push(`torn: work ${id} without its key`);
    if (answer !== null) costs.set(id, bestSchema.parse(JSON.parse(answer)).score.cost);
  }
  return { wrong, ids, costs };
}

/** @param told - by all clients of this store, in their order. */
export async function lookAtCopy(file: string, told: readonly Told[]): Promise<Left> {
  const copy = `${file}.looked-at`;
  for (const end of WITH) if (existsSync(file + end)) cpSync(file + end, copy + end);
  const store = await openStore(copy);
  try {
    return await leftIn(store, told);
  } finally {
    await store.close();
    for (const end of [...WITH, '-shm']) rmSync(copy + end, { force: true });
  }
}
