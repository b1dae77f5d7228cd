// What people call the places and persons of a plan, and which task of a tray follows which.
import type { Plan, Task } from '../model/plan.ts';

export type Names = {
  readonly deck: (id: string) => string;
  readonly room: (id: string) => string;
  readonly mixer: (id: string) => string;
  readonly person: (id: string) => string;
  /** "batch 2 of 3" when its dough has more than one batch, otherwise empty. */
  readonly batchOrder: (batchId: string) => string;
  readonly batchKg: (batchId: string) => number;
};

/** "Bottom" is a fine name on an oven door; in a sentence it needs its noun. */
export function withNoun(name: string, noun: string): string {
  return /\b(deck|oven|chamber|proofer|retarder|cabinet|room|fridge|bowl|mixer)\b/i.test(name) ? name : `${name} ${noun}`;
}

/** The name of a thing; where two things have the same name, with its id, in which a deck names its oven. */
export function nameIn(things: readonly { readonly id: string; readonly name: string }[], id: string): string {
  const name = things.find((thing) => thing.id === id)?.name ?? id;
  const isShared = things.filter((thing) => thing.name === name).length > 1;
  return isShared ? `${name} (${id.replace('/', ' ')})` : name;
}

/** Names of a plan. */
export function namesOf(plan: Plan): Names {
  const { bakehouse, batches } = plan;
  return {
    deck: (id) => withNoun(nameIn(bakehouse.decks, id), 'deck'),
    room: (id) => nameIn([...bakehouse.proofers, ...bakehouse.retarders], id),
    mixer: (id) => nameIn(bakehouse.mixers, id),
    person: (id) => nameIn(bakehouse.people, id),
    batchOrder: (batchId) => {
      const batch = batches.find(({ id }) => id === batchId);
      const sisters = batches.filter(({ dough }) => dough === batch?.dough);
      const position = sisters.findIndex(({ id }) => id === batchId) + 1;
      return sisters.length > 1 ? `batch ${position} of ${sisters.length}` : '';
    },
    batchKg: (batchId) => batches.find(({ id }) => id === batchId)?.kg ?? 0,
  };
}

export type Chain = {
  readonly after: (task: Task) => Task | undefined;
  readonly before: (task: Task) => Task | undefined;
};

/** The order of the tasks of each tray and of each batch. */
export function chainOf(plan: Plan): Chain {
  const chains = new Map<string, Task[]>();
  for (const task of plan.tasks) {
    const key = task.tray ?? `batch ${task.batch}`;
    const chain = chains.get(key);
    if (chain === undefined) chains.set(key, [task]);
    else chain.push(task);
  }
  const after = new Map<string, Task>();
  const before = new Map<string, Task>();
  for (const chain of chains.values()) {
    chain.sort((a, b) => a.start - b.start || a.end - b.end);
    chain.forEach((task, index) => {
      const next = chain[index + 1];
      if (next === undefined) return;
      after.set(task.id, next);
      before.set(next.id, task);
    });
  }
  return { after: (task) => after.get(task.id), before: (task) => before.get(task.id) };
}
