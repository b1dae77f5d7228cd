// WORKING_HOURS: what one day's plan shows of a person's hours, against Directive 2003/88/EC. National law decides.
// The plan knows its own work and the breaks stated in the scenario, and nothing else of the person's day.
import { sayMinute } from '../../check/sayMinute.ts';
import { type Clock, clockOf, dayOffsetAt, minuteAt } from '../../model/clock.ts';
import type { Caution, Task } from '../../model/plan.ts';
import type { Person, Scenario } from '../../model/scenario.ts';
import { shortName } from './longestSays.ts';
import { DAILY_REST_MINUTES, type Turn, turnsOf } from './personWork.ts';

/** Longest stretch without a break that is not remarked on, in minutes, included (Article 4: a day longer than six hours). */
const WITHOUT_BREAK_MINUTES = 6 * 60;
/** Longest turn that leaves the daily rest in its 24 hours, in minutes, included (Article 3). */
const TURN_MINUTES = 24 * 60 - DAILY_REST_MINUTES;
/** Night work in 24 hours that is not remarked on, in minutes, included (Article 8: eight hours on average). */
const NIGHT_WORK_MINUTES = 8 * 60;

const SOURCE = 'Directive 2003/88/EC';

/** The stated breaks of a person that fall into a turn, in order, cut to it. */
function breaksIn(clock: Clock, person: Person, turn: Turn): readonly Turn[] {
  return person.breaks
    .map(({ from, until }) => ({
      start: Math.max(turn.start, minuteAt(clock, from)),
      end: Math.min(turn.end, minuteAt(clock, until)),
    }))
    .filter((pause) => pause.end > pause.start)
    .sort((a, b) => a.start - b.start);
}

/** The longest stretch of a turn with no stated break in it. */
function longestStretch(turn: Turn, breaks: readonly Turn[]): Turn {
  let longest: Turn = { start: turn.start, end: turn.start };
  let start = turn.start;
  for (const { start: pauseStart, end: pauseEnd } of [...breaks, { start: turn.end, end: turn.end }]) {
    if (pauseStart - start > longest.end - longest.start) longest = { start, end: pauseStart };
    start = Math.max(start, pauseEnd);
  }
  return longest;
}

/** Whether a turn touches midnight to five of any day: every national night time holds those hours (Article 2). */
function touchesNight(clock: Clock, turn: Turn): boolean {
  for (let day = dayOffsetAt(clock, turn.start); day <= dayOffsetAt(clock, turn.end); day += 1) {
    const prefix = day === 0 ? '' : `${day > 0 ? '+' : ''}${day}d `;
    const night = { start: minuteAt(clock, `${prefix}00:00`), end: minuteAt(clock, `${prefix}05:00`) };
    if (turn.start < night.end && night.start < turn.end) return true;
  }
  return false;
}

function sayHours(minutes: number): string {
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}

function ofTurn(clock: Clock, person: Person, turn: Turn): readonly Caution[] {
  const who = shortName(person.name ?? person.id);
  const span = (from: Turn) => `${sayMinute(clock, from.start)} to ${sayMinute(clock, from.end)}`;
  const breaks = breaksIn(clock, person, turn);
  const stretch = longestStretch(turn, breaks);
  const workMinutes = breaks.reduce((minutes, pause) => minutes - (pause.end - pause.start), turn.end - turn.start);
  const cautions: Caution[] = [];
  const add = (says: string, article: string) => cautions.push({ code: 'WORKING_HOURS', says, source: `${SOURCE}, ${article}.` });
  if (stretch.end - stretch.start > WITHOUT_BREAK_MINUTES) {
    add(`${who} works ${span(stretch)} with no break stated: over 6 h. National law says which break is due.`, 'Article 4');
  }
  if (turn.end - turn.start > TURN_MINUTES) {
    add(
      `${who}'s work runs from ${span(turn)}: over 13 h, which leaves less than 11 h of rest in 24. National law decides.`,
      'Article 3',
    );
  }
  if (workMinutes > NIGHT_WORK_MINUTES && touchesNight(clock, turn)) {
    add(
      `${who} works ${sayHours(workMinutes)} in a turn with night hours: night work is 8 h on average. National law decides.`,
      'Article 8',
    );
  }
  return cautions;
}

export function workingHours(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  const clock = clockOf(scenario);
  return (scenario.people ?? []).flatMap((person) => turnsOf(person, tasks).flatMap((turn) => ofTurn(clock, person, turn)));
}
