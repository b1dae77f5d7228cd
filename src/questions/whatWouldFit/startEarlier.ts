// The change "start the day earlier": the day and the hours of those who begin it. Used by whatWouldFit.

import { sayMinute, sayMinutes } from '../../check/sayMinute.ts';
import { capital, listed } from '../../explain/why/words.ts';
import type { PatchOperation } from '../../model/changes.ts';
import { clockOf, minuteAt } from '../../model/clock.ts';
import { MAX_DAY_MINUTES } from '../../model/units.ts';
import type { Ground, LadderOf, Variant } from './ladder.ts';

/** A day begun more than a shift earlier is another day; the law of the place sets less (common practice). */
const MOST_MINUTES = 480;
const FIRST_MINUTES = 16;

/** Those who begin with the day; when nobody does, those who come first. */
function firstPeople({ scenario, clock }: Ground): readonly number[] {
  const begins = (scenario.people ?? []).map(({ from }) => Math.max(0, minuteAt(clock, from)));
  const first = Math.min(...begins);
  return begins.flatMap((minute, index) => (minute === first ? [index] : []));
}

function variantAt(ground: Ground, minutes: number): Variant | null {
  const { scenario, clock } = ground;
  const from = sayMinute(clock, -minutes);
  // In a night when the clocks change, a time can come twice or never.
  if (minuteAt(clock, from) !== -minutes) return null;
  if (clockOf({ ...scenario, day: { ...scenario.day, from } }).minutes !== clock.minutes + minutes) return null;
  const operations: PatchOperation[] = [{ op: 'replace', path: '/day/from', value: from }];
  const names = new Map<string, string[]>();
  for (const index of firstPeople(ground)) {
    const person = scenario.people?.[index];
    if (person === undefined) continue;
    const at = minuteAt(clock, person.from) - minutes;
    const begins = sayMinute(clock, at);
    if (minuteAt(clock, begins) !== at) return null;
    operations.push({ op: 'replace', path: `/people/${index}/from`, value: begins });
    names.set(begins, [...(names.get(begins) ?? []), person.name ?? capital(person.id)]);
  }
  const people = [...names].map(([begins, who]) => `${listed(who)} ${who.length === 1 ? 'comes' : 'come'} at ${begins}`);
  const hands = people.length === 0 ? '' : `, and ${listed(people)}`;
  return {
    amount: minutes,
    operations,
    does: `Start the day ${sayMinutes(minutes)} earlier, at ${from}${hands}`,
    earlierBy: minutes,
  };
}

export const startEarlier: LadderOf = (ground) => {
  const { scenario, clock } = ground;
  if (scenario.underway !== undefined) return 'The day has begun already; it cannot start earlier.';
  let top = Math.min(MOST_MINUTES, MAX_DAY_MINUTES - clock.minutes);
  while (top > 0 && variantAt(ground, top) === null) top--;
  if (top < 1) return 'The day is as long as a day may be.';
  return {
    kind: 'start-earlier',
    top,
    first: Math.min(FIRST_MINUTES, top),
    at: (minutes) => {
      const variant = variantAt(ground, minutes);
      return variant === null ? [] : [variant];
    },
    topWords: `Starting ${sayMinutes(top)} earlier`,
    isRising: true,
  };
};
