// Whose hands are free when: the conditions of a step's hands-on work. Used by why.
import { sayMinute } from '../../check/sayMinute.ts';
import type { StepKind } from '../../model/steps.ts';
import type { MinuteSpan } from '../../model/why.ts';
import type { Ground, Standing } from './ground.ts';
import type { Condition, Hindrance } from './option.ts';
import type { Holder, Resource } from './resources.ts';
import { inWords, nameOfTask } from './words.ts';

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
    return { says, full: [], byTasks: [], rule: 'PERSON_HOURS' };
  }
  const busy = resource.holders.filter((one) => one.from <= at && one.until > at);
  const full: MinuteSpan[] = busy.map((one) => ({ start: one.from, end: one.until }));
  const doing = busy.map((one) => `${nameOfTask(one.taskId)} ${say(one.from)} to ${say(one.until)}`).join(' and ');
  const since = busy[0] === undefined ? undefined : stretchBegin(resource, busy[0]);
  const isLonger = since !== undefined && since !== busy[0];
  const says = `${resource.name} is at work on ${doing}${isLonger ? `, without a gap since ${say(since.from)}` : ''}`;
  return { says, full, byTasks: busy.map(({ taskId }) => taskId), ...(isLonger ? { sinceTask: since.taskId } : {}) };
}

/** The first of the pieces of work that follow one another without a gap up to one of them. */
function stretchBegin({ holders }: Resource, last: Holder): Holder {
  let first = last;
  for (;;) {
    const before = holders.find((one) => one.until === first.from && one.from < first.from);
    if (before === undefined) return first;
    first = before;
  }
}

/** People named one by one when several are in the way. */
const MOST_NAMED = 3;

/** Everybody who could do it, those at work first. */
function nobodyFree(each: readonly Hindrance[]): Hindrance {
  const busyFirst = [...each].sort((a, b) => Number(b.byTasks.length > 0) - Number(a.byTasks.length > 0));
  const named = busyFirst.slice(0, MOST_NAMED).map(({ says }) => says);
  const more = each.length - named.length;
  const others = more > 0 ? [`${inWords(more)} more ${more === 1 ? 'is' : 'are'} at work or not there`] : [];
  const says = each.length === 0 ? 'nobody does this' : [...named, ...others].join('; ');
  const since = busyFirst[0]?.sinceTask;
  return {
    says,
    full: each.flatMap(({ full }) => full),
    byTasks: busyFirst.flatMap(({ byTasks }) => byTasks),
    ...(since === undefined ? {} : { sinceTask: since }),
  };
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
    hinders: (minute) => nobodyFree(able.map((one) => personHinders(ground, one, minute + work.after, work.minutes))),
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
