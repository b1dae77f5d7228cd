// What the sheet of a day planned anew marks: now, what is past, and what was planned otherwise before, with how it was in a word.
import type { HandsOn, MovedTask, Plan, Task } from '../model/plan.ts';
import type { DayClock } from './dayClock.ts';
import type { Names } from './names.ts';

export type SinceBefore = {
  /** The minute from which the rest of the day was planned anew. */
  readonly now: number;
  readonly hasMoved: (task: Task) => boolean;
  /** Minutes by which a task begins later than planned before; 0 when it begins as planned. */
  readonly shiftOf: (task: Task) => number;
  /** Id of the deck a bake was to be on, when it is on another now. */
  readonly whereWas: (task: Task) => string | undefined;
  /** How a moved task was planned before: its time, else its place, else its people. */
  readonly was: (task: Task) => string | undefined;
  /** Who was to do a kind of work of it before, when it is somebody else now. */
  readonly whoWas: (task: Task, what: HandsOn['for']) => string | undefined;
};

function wasWords(task: Task, { from }: MovedTask, clock: DayClock, names: Names): string {
  if (from.start !== task.start) return clock.shows(from.start);
  if (from.place !== undefined && from.place.id !== task.place?.id)
    return from.place.kind === 'deck' ? names.deck(from.place.id) : names.room(from.place.id);
  const before = from.people.filter(
    ({ person, for: what }) => !task.handsOn.some((one) => one.person === person && one.for === what),
  );
  return [...new Set(before.map(({ person }) => names.person(person)))].join(', ');
}

/** Who did a kind of work before, where it is somebody else now. */
function whoWas(task: Task, { from }: MovedTask, what: HandsOn['for'], names: Names): string | undefined {
  const before = from.people.find((one) => one.for === what)?.person;
  const now = task.handsOn.find((one) => one.for === what)?.person;
  return before === undefined || now === undefined || before === now ? undefined : names.person(before);
}

/** Undefined for a day that is planned for the first time. */
export function sinceBefore(plan: Plan, clock: DayClock, names: Names): SinceBefore | undefined {
  if (plan.underway === undefined) return undefined;
  const { now, moved } = plan.underway;
  const movedById = new Map(moved.map((one) => [one.task, one]));
  return {
    now,
    hasMoved: ({ id }) => movedById.has(id),
    shiftOf: ({ id, start }) => start - (movedById.get(id)?.from.start ?? start),
    whereWas: ({ id, place }) => {
      const before = movedById.get(id)?.from.place;
      return before?.kind === 'deck' && before.id !== place?.id ? before.id : undefined;
    },
    was: (task) => {
      const one = movedById.get(task.id);
      return one === undefined ? undefined : wasWords(task, one, clock, names);
    },
    whoWas: (task, what) => {
      const one = movedById.get(task.id);
      return one === undefined ? undefined : whoWas(task, one, what, names);
    },
  };
}
