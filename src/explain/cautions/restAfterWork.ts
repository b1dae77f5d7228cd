// REST: the earliest next start of everybody who works in the plan. One day's plan cannot see the day before or after.
import { sayMinute } from '../../check/sayMinute.ts';
import { clockOf } from '../../model/clock.ts';
import type { Caution, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { sayNames, shortName } from './longestSays.ts';
import { DAILY_REST_MINUTES, turnsOf } from './personWork.ts';

export function restAfterWork(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  const clock = clockOf(scenario);
  const ends = (scenario.people ?? []).flatMap((person) => {
    const last = turnsOf(person, tasks).at(-1);
    return last === undefined ? [] : [{ name: shortName(person.name ?? person.id), restedMinute: last.end + DAILY_REST_MINUTES }];
  });
  if (ends.length === 0) return [];
  const names = ends
    .sort((a, b) => b.restedMinute - a.restedMinute)
    .map(({ name, restedMinute }) => `${name} ${sayMinute(clock, restedMinute)}`);
  return [
    {
      code: 'REST',
      says: sayNames('Eleven hours of rest after the work planned here, no next start before:', names),
      source: 'Directive 2003/88/EC, Article 3; national law decides.',
    },
  ];
}
