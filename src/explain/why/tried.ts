// What is in the way at each place and person tried for a step that could be begun nowhere in time. Used by why.
import { sayMinute } from '../../check/sayMinute.ts';
import type { MinuteSpan, Tried } from '../../model/why.ts';
import type { Ground } from './ground.ts';
import type { Condition, Option } from './option.ts';
import type { Walk } from './walk.ts';
import { capital, sayLength } from './words.ts';

export type Stuck = Extract<Walk, { is: 'stuck' }>;

/** Minutes at which the step could begin and still be in time, in order. */
export function minutesIn(arrivals: Uint8Array): readonly number[] {
  return [...arrivals.keys()].filter((minute) => arrivals[minute] === 1);
}

/** The same as spans. */
export function spansIn(arrivals: Uint8Array): MinuteSpan[] {
  const spans: MinuteSpan[] = [];
  for (const minute of minutesIn(arrivals)) {
    const last = spans[spans.length - 1];
    if (last !== undefined && last.end === minute) spans[spans.length - 1] = { start: last.start, end: minute + 1 };
    else spans.push({ start: minute, end: minute + 1 });
  }
  return spans;
}

/** First minute from the first arrival on at which a rule allows the step. */
function firstAllowed(ground: Ground, condition: Condition, from: number): number | null {
  for (let minute = from; minute <= ground.minutes; minute++) if (condition.holds(minute)) return minute;
  return null;
}

function sayThen(isAlone: boolean, first: number | null, short: number | null, say: (minute: number) => string): string {
  if (!isAlone) return 'There are minutes at which this would let it in, but then something else does not.';
  if (first === null || short === null) return 'That does not change in time before the day ends.';
  return `As far as this goes it could begin at ${say(first)}: ${sayLength(short)} short.`;
}

function triedOf(ground: Ground, condition: Condition, arrivals: readonly number[], isNeverMet: boolean): Tried {
  const say = (minute: number): string => sayMinute(ground.day.clock, minute);
  const firstMinute = firstAllowed(ground, condition, arrivals[0] as number);
  const inVain = arrivals.filter((minute) => !condition.holds(minute));
  const before = inVain.filter((minute) => firstMinute === null || minute < firstMinute);
  const latest = (before[before.length - 1] ?? inVain[inVain.length - 1]) as number;
  const { says, full, rule = condition.rule } = condition.hinders(latest);
  // What would let it in at some minute before the latest is not in its way alone.
  const isAlone = isNeverMet && (firstMinute === null || firstMinute > latest);
  const shortMinutes = isAlone && firstMinute !== null ? firstMinute - latest : null;
  const then = sayThen(isAlone, firstMinute, shortMinutes, say);
  const { kind, id } = condition;
  return { kind, id, rule, isAlone, firstMinute, shortMinutes, full: [...full], says: `${capital(says)}. ${then}` };
}

/** Rules that keep the step out of a place at every arrival, each by itself; where none does, all that do at some. */
function inTheWay(
  option: Option,
  arrivals: readonly number[],
): { readonly conditions: readonly Condition[]; readonly isAlone: boolean } {
  const alone = option.conditions.filter((condition) => !arrivals.some((minute) => condition.holds(minute)));
  if (alone.length > 0) return { conditions: alone, isAlone: true };
  const some = option.conditions.filter((condition) => arrivals.some((minute) => !condition.holds(minute)));
  return { conditions: some, isAlone: false };
}

/** The rule to follow at one place: the first in the way there. */
export function firstInTheWay(option: Option, arrivals: readonly number[]): Condition | undefined {
  return inTheWay(option, arrivals).conditions[0];
}

/** Place by place in the order of the scenario; hands person by person, each person once. */
export function triedAt(ground: Ground, { arrivals, options }: Stuck): Tried[] {
  const minutes = minutesIn(arrivals);
  const found: Tried[] = [];
  for (const option of options) {
    const { conditions, isAlone } = inTheWay(option, minutes);
    for (const condition of conditions) {
      const each = condition.kind === 'person' && option.people.length > 0 ? option.people : [condition];
      for (const one of each) {
        if (minutes.every((minute) => one.holds(minute))) continue;
        if (condition.kind === 'person' && found.some(({ kind, id }) => kind === 'person' && id === one.id)) continue;
        found.push(triedOf(ground, one, minutes, isAlone));
      }
    }
  }
  return found;
}
