// What is wrong with events and decisions taken one by one: names nobody knows, none or several named, times that cannot be, and
// the same told twice.
import { minuteAt, occurrences } from '../../model/clock.ts';
import type { Happened, HappenedEvent } from '../../model/happened.ts';
import { didYouMean } from '../didYouMean.ts';
import type { ErrorCode } from '../errorCodes.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import { choiceOf, shown } from '../shown.ts';
import type { KnownDay } from './knownDay.ts';

/** Ids named in a list of choices at most. */
const SHOWN_IDS = 12;

const RESTS = ['bulk', 'rest', 'retard', 'proof', 'cool'];

function unknown(code: ErrorCode, kind: string, id: string, at: string, known: Iterable<string>): CodedError {
  const ids = [...known];
  const close = didYouMean(id, ids);
  const list = ids.slice(0, SHOWN_IDS).map(shown).join(', ');
  const otherwise =
    ids.length === 0 ? `There is no ${kind}.` : `Name one that is there: ${list}${ids.length > SHOWN_IDS ? ', ...' : ''}.`;
  return inputErrorAt(
    code,
    at,
    `There is no ${kind} ${shown(id)}.`,
    close === undefined ? otherwise : `Did you mean "${close}"? ${otherwise}`,
  );
}

type Named = { readonly key: string; readonly id: string | undefined };

/** Exactly one of several names must be there. */
function oneOf(names: readonly Named[], at: string, what: string): readonly CodedError[] {
  const given = names.filter(({ id }) => id !== undefined);
  const keys = choiceOf(names.map(({ key }) => `"${key}"`));
  if (given.length === 1) return [];
  if (given.length === 0) return [inputErrorAt('NAMES_NONE', at, `${what} names nothing.`, `Add ${keys}.`)];
  const both = given.map(({ key }) => `"${key}"`).join(' and ');
  return [
    inputErrorAt('NAMES_SEVERAL', at, `${what} names ${both}.`, 'Keep one of them, and write another entry for the other.'),
  ];
}

class Checks {
  readonly errors: CodedError[] = [];
  private readonly day: KnownDay;

  constructor(day: KnownDay) {
    this.day = day;
  }

  task(id: string, at: string): void {
    if (!this.day.tasks.has(id)) this.errors.push(unknown('UNKNOWN_TASK', 'task', id, at, this.day.tasks.keys()));
  }

  tray(id: string | undefined, at: string): void {
    if (id !== undefined && !this.day.trays.has(id)) this.errors.push(unknown('UNKNOWN_TRAY', 'tray', id, at, this.day.trays));
  }

  batch(id: string | undefined, at: string): void {
    if (id !== undefined && !this.day.batches.has(id))
      this.errors.push(unknown('UNKNOWN_BATCH', 'batch', id, at, this.day.batches));
  }

  product(id: string, at: string): void {
    if (!this.day.products.has(id)) this.errors.push(unknown('UNKNOWN_PRODUCT', 'product', id, at, this.day.products));
  }

  /** The minute of a clock time, or undefined when it never comes. */
  private minuteOf(text: string, at: string): number | undefined {
    const { clock } = this.day;
    if (occurrences(clock.date, clock.timeZone, text) > 0) return minuteAt(clock, text);
    const says = `The clock never shows ${text} on that date: the clocks go forward over it.`;
    this.errors.push(inputErrorAt('TIME_SKIPPED', at, says, 'Write a time before or after the missing hour.'));
    return undefined;
  }

  /** What has happened lies in the day and not after now. */
  past(text: string, at: string): void {
    const minute = this.minuteOf(text, at);
    if (minute === undefined) return;
    if (minute > this.day.now)
      this.errors.push(
        inputErrorAt('AFTER_NOW', at, `${text} is later than now.`, 'Tell only what has happened by now, or correct --now.'),
      );
    else if (minute < 0)
      this.errors.push(
        inputErrorAt(
          'TIME_OUTSIDE_DAY',
          at,
          `${text} lies before the day begins.`,
          'Write a time within the day; "-1d 21:30" is the evening before.',
        ),
      );
  }

  wanted(text: string, at: string): void {
    const minute = this.minuteOf(text, at);
    if (minute === undefined || (minute > 0 && minute <= this.day.clock.minutes)) return;
    this.errors.push(inputErrorAt('ORDER_OUTSIDE_DAY', at, `${text} lies outside the day.`, 'Write a time within the day.'));
  }

  span(from: string, until: string | undefined, at: string): void {
    const begin = this.minuteOf(from, `${at}/from`);
    const end = until === undefined ? this.day.clock.minutes : this.minuteOf(until, `${at}/until`);
    if (begin === undefined || end === undefined) return;
    if (begin >= this.day.clock.minutes || end <= 0)
      this.errors.push(
        inputErrorAt(
          'TIME_OUTSIDE_DAY',
          `${at}/from`,
          `${from} to ${until ?? 'the end'} lies outside the day.`,
          'Write times within the day.',
        ),
      );
    else if (end <= begin)
      this.errors.push(
        inputErrorAt('SPAN_UPSIDE_DOWN', `${at}/until`, `${until} is not after ${from}.`, 'Put the end after the beginning.'),
      );
  }

  ended(id: string, at: string): void {
    const task = this.day.tasks.get(id);
    if (task === undefined || !RESTS.includes(task.step) || !this.day.goesOn.has(id)) return;
    const says = `${id} goes on until the next step begins.`;
    this.errors.push(inputErrorAt('RESTS_UNTIL_NEXT', at, says, 'Say when the next step began instead, with what: began.'));
  }

  event(event: HappenedEvent, at: string): void {
    switch (event.what) {
      case 'began':
      case 'ended':
        this.task(event.task, `${at}/task`);
        this.past(event.at, `${at}/at`);
        if (event.what === 'ended') this.ended(event.task, `${at}/task`);
        return;
      case 'not-yet':
        this.task(event.task, `${at}/task`);
        return;
      case 'needs-more':
        this.errors.push(
          ...oneOf(
            [
              { key: 'batch', id: event.batch },
              { key: 'tray', id: event.tray },
            ],
            at,
            'What needs more',
          ),
        );
        this.batch(event.batch, `${at}/batch`);
        this.tray(event.tray, `${at}/tray`);
        return;
      case 'away':
        if (!this.day.people.has(event.person))
          this.errors.push(unknown('UNKNOWN_PERSON', 'person', event.person, `${at}/person`, this.day.people));
        this.span(event.from, event.until, at);
        return;
      case 'out-of-use':
        this.outOfUse(event, at);
        return;
      case 'ordered':
        this.product(event.product, `${at}/product`);
        this.wanted(event.readyBy, `${at}/readyBy`);
        return;
      case 'order-changed':
        this.product(event.product, `${at}/product`);
        this.minuteOf(event.readyBy, `${at}/readyBy`);
        if (event.newReadyBy !== undefined) this.wanted(event.newReadyBy, `${at}/newReadyBy`);
        if (event.newReadyBy === undefined && event.pieces === undefined)
          this.errors.push(
            inputErrorAt('NOTHING_CHANGED', at, 'The changed order says neither pieces nor newReadyBy.', 'Add what has changed.'),
          );
        return;
      case 'order-cancelled':
        this.product(event.product, `${at}/product`);
        this.minuteOf(event.readyBy, `${at}/readyBy`);
        return;
      case 'lost':
        this.tray(event.tray, `${at}/tray`);
    }
  }

  private outOfUse(event: Extract<HappenedEvent, { what: 'out-of-use' }>, at: string): void {
    const kinds = ['deck', 'proofer', 'retarder', 'mixer'] as const;
    const names = kinds.map((key) => ({ key, id: event[key] }));
    this.errors.push(...oneOf(names, at, 'What is out of use'));
    for (const { key, id } of names)
      if (id !== undefined && !this.day.places[key].has(id))
        this.errors.push(unknown('UNKNOWN_PLACE', key, id, `${at}/${key}`, this.day.places[key]));
    this.span(event.from, event.until, at);
  }
}

/** What an event tells of a task or tray, as text to compare; two that are equal tell the same thing twice. */
function topicOf(event: HappenedEvent): string | undefined {
  if (event.what === 'began' || event.what === 'not-yet') return `whether ${event.task} began`;
  if (event.what === 'ended') return `when ${event.task} ended`;
  return event.what === 'lost' ? `that ${event.tray} is lost` : undefined;
}

function toldTwice(events: readonly HappenedEvent[]): readonly CodedError[] {
  const seen = new Map<string, number>();
  return events.flatMap((event, index) => {
    const topic = topicOf(event);
    if (topic === undefined) return [];
    const first = seen.get(topic);
    seen.set(topic, first ?? index);
    if (first === undefined) return [];
    return [
      inputErrorAt(
        'TOLD_TWICE',
        `/happened/${index}`,
        `Events ${first + 1} and ${index + 1} both tell ${topic}.`,
        'Keep one of them.',
      ),
    ];
  });
}

/** Errors of events and decisions that have the right shape. */
export function eventErrors({ happened, keep }: Happened, day: KnownDay): readonly CodedError[] {
  const checks = new Checks(day);
  happened.forEach((event, index) => {
    checks.event(event, `/happened/${index}`);
  });
  keep.forEach(({ task, tray, batch }, index) => {
    const at = `/keep/${index}`;
    const names = [
      { key: 'task', id: task },
      { key: 'tray', id: tray },
      { key: 'batch', id: batch },
    ];
    checks.errors.push(...oneOf(names, at, 'The decision'));
    if (task !== undefined) checks.task(task, `${at}/task`);
    checks.tray(tray, `${at}/tray`);
    checks.batch(batch, `${at}/batch`);
  });
  return [...checks.errors, ...toldTwice(happened)];
}
