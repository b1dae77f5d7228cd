// Whether more fits a day, on one screen: the verdict, what it costs the rest, the busiest moment, how much and by when, and what
// would make it fit.
import type { FitAnswer } from '../model/fitAnswer.ts';
import type { FitChange, WouldFit } from '../model/wouldFit.ts';
import type { Ink } from './ink.ts';

const UNTRIED: Readonly<Record<FitChange, string>> = {
  'start-earlier': 'starting earlier',
  'more-shelves': 'more shelves',
  'deck-place': 'one more place on a deck',
  'another-person': 'another pair of hands',
  'move-order': 'a later time',
  'drop-pieces': 'fewer pieces',
};

function sayChanges(wouldFit: WouldFit | null): readonly string[] {
  if (wouldFit === null) return [];
  const { says, changes, notOffered } = wouldFit;
  const untried = notOffered.filter(({ because }) => because === 'no-time').map(({ kind }) => UNTRIED[kind]);
  const others = notOffered.filter(({ because }) => because !== 'no-time');
  return [
    says,
    ...changes.map((change) => `  ${change.says}`),
    ...others.map((other) => `  ${other.says}`),
    ...(untried.length === 0 ? [] : [`  Not tried out, for want of time: ${untried.join(', ')}.`]),
  ];
}

/** Everything a person is told, ending in a newline. */
export function sayFit(answer: FitAnswer, ink: Ink): string {
  const { fits, says, base, cost, busiest, most, readyTimes, reasons, wouldFitIf, notReached } = answer;
  const parts: readonly (readonly [title: string, lines: readonly string[]])[] = [
    ['Why', reasons.map((reason) => reason.says)],
    ['What it costs the rest', cost.says],
    ['Places and hands', [busiest.says]],
    ['How much', most.map((one) => one.says)],
    ['By when', readyTimes.map((one) => one.says)],
    ['What would make it fit', sayChanges(wouldFitIf)],
    ['Not reached in the time', notReached],
  ];
  const { name, date, timeZone } = base.scenario;
  const lines = [
    `${ink.strong(name)}, ${date}, ${timeZone}`,
    fits ? ink.good(says) : ink.bad(says),
    ...parts.flatMap(([title, texts]) => (texts.length === 0 ? [] : ['', ink.quiet(title), ...texts])),
  ];
  return `${lines.join('\n')}\n`;
}
