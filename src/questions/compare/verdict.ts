// The verdict on one change in one sentence: what gets better or worse, how many more trays, what is full then, what is proved.
// Used by compare.
import { clockOf, wallClockAt } from '../../model/clock.ts';
import type { Capacity, Difference, JudgedDifference } from '../../model/comparison.ts';
import { isFullWords } from '../capacity/fullWords.ts';
import { trayWords } from './capacityAnswer.ts';
import type { Judged } from './differences.ts';
import { isNoStricter } from './isNoStricter.ts';

type Differences = Omit<Difference, 'says'>;

function count(number: number, one: string): string {
  return `${number} ${number === 1 ? one : `${one}s`}`;
}

function inHours(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${String(minutes % 60).padStart(2, '0')} min`;
}

function instead(now: string, before: string): string {
  return `${now} instead of ${before}`;
}

function sayTroubles(base: Judged, other: Judged): readonly string[] {
  const [was, is] = [base.figures.score, other.figures.score];
  const parts: string[] = [];
  if (is.leftOutTrays !== was.leftOutTrays) {
    const before = count(was.leftOutTrays, 'tray');
    if (is.leftOutTrays === 0) parts.push(`nothing is left out any more (as it is, ${before})`);
    else
      parts.push(`${count(is.leftOutTrays, 'tray')} left out instead of ${was.leftOutTrays === 0 ? 'none' : was.leftOutTrays}`);
  }
  if (is.lateTrayMinutes !== was.lateTrayMinutes) {
    const before = inHours(was.lateTrayMinutes);
    if (is.lateTrayMinutes === 0) parts.push(`nothing is late any more (as it is, ${before})`);
    else
      parts.push(
        `trays are late by ${inHours(is.lateTrayMinutes)} in all instead of ${was.lateTrayMinutes === 0 ? 'none' : before}`,
      );
  }
  return parts;
}

function shift(name: string, minute: number, before: number, { scenario }: Judged): string {
  const by = Math.abs(minute - before);
  return `${name} at ${wallClockAt(clockOf(scenario), minute)}, ${inHours(by)} ${minute < before ? 'earlier' : 'later'}`;
}

function sayTimes(base: Judged, other: Judged): readonly string[] {
  const [was, is] = [base.figures.score, other.figures.score];
  const parts: string[] = [];
  if (other.scenario.goals.aim === 'start-late' && is.firstHandsOnMinute !== was.firstHandsOnMinute)
    parts.push(shift('work begins', is.firstHandsOnMinute, was.firstHandsOnMinute, other));
  if (is.finishMinute !== was.finishMinute && is.finishMinute > 0 && was.finishMinute > 0)
    parts.push(shift('the last tray is ready', is.finishMinute, was.finishMinute, other));
  if (is.temperatureChanges !== was.temperatureChanges)
    parts.push(instead(count(is.temperatureChanges, 'temperature change'), String(was.temperatureChanges)));
  return parts;
}

/** What is in the way of the next tray: proved, or the busiest as far as was found. */
export function sayThen(capacity: Capacity): string {
  if (capacity.full === null) return '';
  if (capacity.isExact && capacity.limitProof === 'work') return `after that ${isFullWords(capacity.full)}`;
  return capacity.isExact
    ? `after that nothing more fits, the busiest being ${capacity.full.words}`
    : `the busiest is then ${capacity.full.words}`;
}

function sayTrays(base: Judged, other: Judged, difference: JudgedDifference): readonly string[] {
  const [was, is] = [base.figures.capacity, other.figures.capacity];
  if (was === null || is === null || difference.is === 'not-comparable') return [];
  const by = Math.abs(is.foundTrays - was.foundTrays);
  const same = isNoStricter(base.scenario, other.scenario) ? 'it takes no more trays' : 'it takes as many trays';
  if (by === 0) return [`${same}${difference.isProved ? ' (proved)' : ' (as far as was found)'}`];
  const word = is.foundTrays > was.foundTrays ? 'more' : 'fewer';
  const takes = `it takes ${by} ${word} ${trayWords(other.scenario, is.of ?? undefined, by)}${difference.isProved ? ' (proved)' : ' (found, not proved)'}`;
  const then = sayThen(is);
  return then === '' ? [takes] : [takes, then];
}

function sayNothing(base: Judged, other: Judged, { price, capacity }: Differences): string {
  const what = isNoStricter(base.scenario, other.scenario) ? 'adds nothing' : 'changes nothing';
  const full = other.figures.capacity?.full ?? null;
  const isProved = price.isProved && capacity.isProved;
  if (isProved) return `it ${what}, and that is proved${full === null ? '' : `: ${isFullWords(full)}`}`;
  const found = price.isProved ? 'the price proved, the trays as far as was found' : 'as far as was found';
  return `it ${what}, ${capacity.isProved ? 'the trays proved, the price as far as was found' : found}`;
}

function sayPrice(base: Judged, other: Judged, price: JudgedDifference): readonly string[] {
  if (price.is === 'not-comparable') return ['its prices are others, so that prices cannot be held side by side'];
  const rounded = ({ figures }: Judged): string => String(Math.round(figures.score.cost * 100) / 100);
  const proved = price.isProved ? ', proved' : ', as far as was found';
  if (price.is === 'same') return [`the price stays ${rounded(base)}${proved}`];
  return [`the price is ${rounded(other)} instead of ${rounded(base)}${proved}`];
}

/** One sentence, beginning with the title of the change. */
export function verdict(title: string, base: Judged, other: Judged, differences: Differences): string {
  const { price, capacity } = differences;
  if (price.is === 'same' && capacity.is === 'same') return `${title}: ${sayNothing(base, other, differences)}.`;
  const parts = [
    ...sayTrays(base, other, capacity),
    ...sayTroubles(base, other),
    ...sayTimes(base, other),
    ...sayPrice(base, other, price),
  ];
  return `${title}: ${parts.join('; ')}.`;
}
