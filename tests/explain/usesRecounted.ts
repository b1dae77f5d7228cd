// Counts from a plan's tasks alone who has a place or a person at a minute, without the code that explains. Used by tests of it.
import { clockOf, minuteAt } from '../../src/model/clock.ts';
import type { Plan, Task } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import type { ResourceKind } from '../../src/model/why.ts';

const KEPT = ['shelf', 'retarder', 'rack'];

/** When the step after a task begins to need its tray: loading counts as the begin of a bake. */
function nextBegins(scenario: Scenario, plan: Plan, task: Task): number {
  const begins = (other: Task): number => {
    const mine = other.handsOn.filter((hands) => hands.for === 'load').map((hands) => hands.start);
    const step = scenario.products
      .find(({ id }) => id === other.product)
      ?.steps.find((one) => one.do === 'bake' && other.step === 'bake');
    const load = step?.do === 'bake' ? step.load : 0;
    return Math.min(other.start - load, ...mine);
  };
  const isNext = (other: Task): boolean =>
    other.id !== task.id && other.batch === task.batch && begins(other) >= task.start && other.start >= task.end;
  const own = plan.tasks.filter((other) => isNext(other) && (task.tray === undefined || other.tray === task.tray));
  const batchSteps = own.filter((other) => other.tray === undefined);
  const after = task.tray === undefined && batchSteps.length > 0 ? batchSteps : own;
  return after.length === 0 ? task.end : Math.max(task.end, Math.min(...after.map(begins)));
}

/** How many hold a place, or whether a person is at work, at each minute of the day. */
export function recounted(scenario: Scenario, plan: Plan, kind: ResourceKind, id: string): number[] {
  const count = new Array<number>(plan.day.minutes).fill(0);
  const add = (from: number, until: number): void => {
    for (let minute = from; minute < until; minute++) count[minute] = (count[minute] ?? 0) + 1;
  };
  for (const task of plan.tasks) {
    if (kind === 'person') {
      for (const hands of task.handsOn) if (hands.person === id) add(hands.start, hands.end);
    } else if (task.place?.kind === kind && task.place.id === id) {
      add(task.start, KEPT.includes(kind) ? nextBegins(scenario, plan, task) : task.end);
    }
  }
  return count;
}

/** Minutes of the day a person is there. */
export function isThere(scenario: Scenario, personId: string, minute: number): boolean {
  const clock = clockOf(scenario);
  const person = scenario.people?.find((one) => one.id === personId);
  if (person === undefined) throw new Error(`nobody is called ${personId}`);
  const isIn = (span: { readonly from: string; readonly until: string }): boolean =>
    minute >= minuteAt(clock, span.from) && minute < minuteAt(clock, span.until);
  return isIn(person) && !person.breaks.some(isIn);
}
