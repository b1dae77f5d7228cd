// What events of a day may speak of: the ids of its plan and scenario, its clock, and now. Used by the checks of events.
import { type Clock, clockOf } from '../../model/clock.ts';
import type { Plan, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';

export type KnownDay = {
  readonly scenario: Scenario;
  readonly clock: Clock;
  readonly now: number;
  readonly tasks: ReadonlyMap<string, Task>;
  /** Tasks after which their tray goes on to another step. */
  readonly goesOn: ReadonlySet<string>;
  readonly trays: ReadonlySet<string>;
  readonly batches: ReadonlySet<string>;
  readonly people: ReadonlySet<string>;
  readonly products: ReadonlySet<string>;
  readonly places: Readonly<Record<'deck' | 'proofer' | 'retarder' | 'mixer', ReadonlySet<string>>>;
};

/** All tasks but the last of each tray. */
function tasksThatGoOn(plan: Plan): ReadonlySet<string> {
  const last = new Map<string, Task>();
  for (const task of plan.tasks) {
    if (task.tray === undefined) continue;
    const other = last.get(task.tray);
    if (other === undefined || task.start > other.start || (task.start === other.start && task.end > other.end))
      last.set(task.tray, task);
  }
  const ends = new Set([...last.values()].map(({ id }) => id));
  return new Set(plan.tasks.filter(({ id }) => !ends.has(id)).map(({ id }) => id));
}

export function knownDayOf(scenario: Scenario, plan: Plan, now: number): KnownDay {
  const { equipment } = scenario;
  const ids = (things: readonly { readonly id: string }[]): ReadonlySet<string> => new Set(things.map(({ id }) => id));
  return {
    scenario,
    clock: clockOf(scenario),
    now,
    tasks: new Map(plan.tasks.map((task) => [task.id, task])),
    goesOn: tasksThatGoOn(plan),
    trays: ids(plan.batches.flatMap(({ trays }) => trays)),
    batches: ids(plan.batches),
    people: ids(scenario.people ?? []),
    products: ids(scenario.products),
    places: {
      deck: new Set(equipment.ovens.flatMap((oven) => oven.decks.map(({ id }) => `${oven.id}/${id}`))),
      proofer: ids(equipment.proofers),
      retarder: ids(equipment.retarders),
      mixer: ids(equipment.mixers ?? []),
    },
  };
}
