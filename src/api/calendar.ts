// A plan as a calendar (RFC 5545, Desruisseaux, 2009): an event with an alarm for everything the oven wants. One of the formats of a plan.
import { createHash } from 'node:crypto';
import { ICalAlarmType, ICalCalendar, ICalCalendarMethod, type ICalEventData } from 'ical-generator';
import { bookOf } from '../draw/bookOf.ts';
import { deckHeatOf, degrees } from '../draw/deckHeat.ts';
import { type Book, sentenceOf } from '../draw/sentences.ts';
import { type Stint, stintsOf } from '../draw/stints.ts';
import { clockOfPlan } from '../model/clock.ts';
import type { Plan } from '../model/plan.ts';

/** How long before each event the alarm goes: time to wash one's hands and cross the room. */
const ALARM_SECONDS_BEFORE = 3 * 60;

type Action = {
  /** What stays the same when the day is planned anew, so that a calendar changes the event it has. */
  readonly key: string;
  /** Minutes of the day; equal where it is done in no planned time. */
  readonly start: number;
  readonly end: number;
  readonly says: string;
};

function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function heatActions({ plan, names, clock }: Book): readonly Action[] {
  return plan.decks.flatMap(({ id }) =>
    deckHeatOf(plan, id).moves.map((move, index) => {
      const verb = move.isFirst && move.toC > move.fromC ? 'heat' : 'turn';
      const says = `${verb} ${names.deck(id)} from ${degrees(move.fromC)} to ${degrees(move.toC)}, there at ${clock.says(move.end)}`;
      return { key: `heat ${id} ${index + 1}`, start: move.start, end: move.start, says };
    }),
  );
}

function ovenStint(book: Book, stint: Stint): Action {
  const [first] = stint.tasks.map(({ id }) => id).sort();
  const who = stint.person === null ? '' : `${book.names.person(stint.person)}: `;
  return { key: `${stint.does} ${first}`, start: stint.start, end: stint.end, says: `${who}${sentenceOf(book, stint)}` };
}

/** Trays that go into or out of a deck in the same minutes by the same hands are one event and ring once. */
function ovenActions(book: Book): readonly Action[] {
  const trips = new Map<string, Stint>();
  for (const stint of stintsOf(book.plan)) {
    const { does, start, end, person, tasks } = stint;
    if (does !== 'load' && does !== 'unload') continue;
    const key = JSON.stringify([does, tasks[0]?.place?.id, start, end, person]);
    const others = trips.get(key)?.tasks ?? [];
    trips.set(key, { ...stint, tasks: [...others, ...tasks] });
  }
  return [...trips.values()].map((stint) => ovenStint(book, stint));
}

// Line breaks are written as \n by the package; what else RFC 5545, section 3.1, calls CONTROL may not be written at all.
// biome-ignore lint/suspicious/noControlCharactersInRegex: refusing control characters is the point.
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g;
const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

function plainText(text: string): string {
  return text.replace(CONTROL, '').replace(LONE_SURROGATE, '\ufffd');
}

/** TEXT of RFC 5545, section 3.3.11. The package writes texts of events so, and the name of the calendar as it is. */
function escapedText(text: string): string {
  return plainText(text)
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\r\n|\r|\n/g, '\\n');
}

/** The same for the same action of the same day, and for nothing else. */
function uidOf({ scenario }: Plan, key: string): string {
  const whole = JSON.stringify([scenario.name, scenario.date, scenario.timeZone, key]);
  return `${createHash('sha256').update(whole).digest('hex').slice(0, 32)}@ovenward`;
}

function eventOf(plan: Plan, action: Action, stampedAt: Date): ICalEventData {
  const { startEpochMs } = clockOfPlan(plan);
  const summary = plainText(sentenceCase(action.says));
  // Instants in UTC are right whatever the clocks do that night; the calendar shows them in its own time.
  const at = (minute: number) => new Date(startEpochMs + minute * 60_000);
  return {
    id: uidOf(plan, action.key),
    stamp: stampedAt,
    // Grows from each version of the day to the next (section 3.8.7.4): minutes since the epoch, which fit into the number it may be.
    sequence: Math.floor(stampedAt.getTime() / 60_000),
    start: at(action.start),
    ...(action.end > action.start ? { end: at(action.end) } : {}),
    summary,
    alarms: [{ type: ICalAlarmType.display, trigger: ALARM_SECONDS_BEFORE, description: summary }],
  };
}

/** `stampedAt`: when the plan was made or posted, RFC 3339; it orders the versions of a day. */
export function calendarOf(plan: Plan, stampedAt: string): string {
  const book = bookOf(plan);
  const actions = [...heatActions(book), ...ovenActions(book)].sort(
    (a, b) => a.start - b.start || a.key.localeCompare(b.key, 'en'),
  );
  const stamp = new Date(stampedAt);
  const calendar = new ICalCalendar({
    name: escapedText(`${plan.scenario.name}, ${plan.scenario.date}`),
    prodId: { company: 'ovenward', product: 'plan', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  for (const action of actions) calendar.createEvent(eventOf(plan, action, stamp));
  return `${calendar.toString().trimEnd()}\r\n`;
}
