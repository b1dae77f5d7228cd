// Joins pieces of work that a person does as one: trays of the same product shaped one after the other, or loaded together.
import type { Stint } from './stints.ts';

/** Oven work within so many minutes is one trip to the oven. */
const TRIP_MINUTES = 3;

function isOvenWork(stint: Stint): boolean {
  return stint.does === 'load' || stint.does === 'unload';
}

/** Stints with equal keys may become one line. A mixed load of a rack oven stays a line of its own. */
function keyOf(stint: Stint): string {
  const [task] = stint.tasks;
  const thing = stint.tasks.length > 1 ? `load ${task?.id}` : (task?.product ?? `batch ${task?.batch}`);
  const deck = isOvenWork(stint) ? (task?.place?.id ?? '') : '';
  return [stint.person ?? '', stint.does, thing, deck].join('|');
}

function follows(last: Stint, next: Stint, previousOfPerson: Stint | undefined): boolean {
  if (isOvenWork(next)) return next.start - last.end <= TRIP_MINUTES;
  if (next.start > last.end) return false;
  // Two trays of one product with another job in between are two jobs.
  return next.person === null || previousOfPerson === last;
}

function joined(last: Stint, next: Stint): Stint {
  return { ...last, end: Math.max(last.end, next.end), tasks: [...last.tasks, ...next.tasks] };
}

/** Stints by start, joined where one line of the list says it all. `changeOf`: what is new of one; those with other news stay apart. */
export function mergeStints(stints: readonly Stint[], changeOf: (stint: Stint) => string = () => ''): readonly Stint[] {
  const merged: Stint[] = [];
  const openByKey = new Map<string, number>();
  const lastOfPerson = new Map<string, number>();
  for (const stint of stints) {
    const key = `${keyOf(stint)}|${changeOf(stint)}`;
    const open = openByKey.get(key);
    const last = open === undefined ? undefined : merged[open];
    const previousIndex = stint.person === null ? undefined : lastOfPerson.get(stint.person);
    const previous = previousIndex === undefined ? undefined : merged[previousIndex];
    let index: number;
    if (open !== undefined && last !== undefined && follows(last, stint, previous)) {
      index = open;
      merged[open] = joined(last, stint);
    } else {
      index = merged.push(stint) - 1;
    }
    openByKey.set(key, index);
    if (stint.person !== null) lastOfPerson.set(stint.person, index);
  }
  return merged;
}
