// Whose hands are free when: the conditions of a step's hands-on work. Used by why.
import { sayMinute } from '../../check/sayMinute.ts';
import type { StepKind } from '../../model/steps.ts';
import type { MinuteSpan } from '../../model/why.ts';
import type { Ground, Standing } from './ground.ts';
import type { Condition, Hindrance } from './option.ts';
import { nameOfTask } from './words.ts';

/** Work of one person: so many minutes, beginning so many after the step begins. */
export type Work = { readonly after: number; readonly minutes: number };

/** What a person is doing, or why they are not there, in the minutes from one to another. */
function personHinders(ground: Ground, { resource, held }: Standing, from: number, minutes: number): Hindrance {
  const say = (minute: number): string => sayMinute(ground.day.clock, minute);
  const at = [...Array(minutes).keys()].map((n) => from + n).find((t) => resource.open[t] !== 1 || (held[t] as number) > 0);
  if (at === undefined || at >= ground.minutes) return { says: `the day ends for ${resource.name}`, full: [], byTasks: [] };
  if (resource.open[at] !== 1) {
    const back = resource.open.indexOf(1, at);
    const says =
      back < 0 ? `${resource.name} is gone at ${say(at)}` : `${resource.name} is not there at ${say(at)}, only from ${say(back)}`;
    return { says, full: [], byTasks: [] };
  }
  const busy = resource.holders.filter((one) => one.from <= at && one.until > at);
  const full: MinuteSpan[] = busy.map((one) => ({ start: one.from, end: one.until }));
  const doing = busy.map((one) => `${nameOfTask(one.taskId)} ${say(one.from)} to ${say(one.until)}`).join(' and ');
  return { says: `${resource.name} is at work on ${doing}`, full, byTasks: busy.map(({ taskId }) => taskId) };
}

export type Hands = {
  readonly condition: Condition;
  readonly people: readonly Condition[];
};

/** Null where the scenario names no people or the work takes no time: hands never limit it. */
export function handsFor(ground: Ground, step: StepKind, work: Work): Hands | null {
  const { people } = ground.day.scenario;
  if (people === undefined || work.minutes <= 0) return null;
  const standing = ground.standing.filter(({ resource }) => resource.kind === 'person');
  const able = standing.filter(({ resource }) => !people.find(({ id }) => id === resource.id)?.cannot.includes(step));
  const isFree = ({ freeRun }: Standing, minute: number): boolean => (freeRun[minute + work.after] ?? 0) >= work.minutes;
  const hands: Condition = {
    kind: 'person',
    id: able.map(({ resource }) => resource.id).join(', '),
    rule: 'PERSON_BUSY',
    holds: (minute) => able.some((one) => isFree(one, minute)),
    hinders: (minute) => {
      const each = able.map((one) => personHinders(ground, one, minute + work.after, work.minutes));
      const says = each.length === 0 ? 'nobody does this' : each.map((one) => one.says).join('; ');
      return { says, full: each.flatMap((one) => one.full), byTasks: each.flatMap((one) => one.byTasks) };
    },
  };
  const one = (standingOne: Standing): Condition => {
    const { resource } = standingOne;
    const can = able.includes(standingOne);
    return {
      kind: 'person',
      id: resource.id,
      rule: can ? 'PERSON_BUSY' : 'PERSON_CANNOT',
      holds: (minute) => can && isFree(standingOne, minute),
      hinders: (minute) =>
        can
          ? personHinders(ground, standingOne, minute + work.after, work.minutes)
          : { says: `${resource.name} does not ${step}`, full: [], byTasks: [] },
    };
  };
  return { condition: hands, people: standing.map(one) };
}
