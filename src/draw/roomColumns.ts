// Columns of proofers, retarders and the cooling rack: a bar for each shelf place when they are few, else how full it is.
import type { Plan, Task } from '../model/plan.ts';
import { type Column, type Note, note } from './column.ts';
import { withNoun } from './names.ts';
import { drawPositions } from './positionsColumn.ts';
import { drawProfile, fullest } from './profile.ts';
import type { Book } from './sentences.ts';
import { shows, type TimeWindow } from './sheet.ts';
import { stayLabels } from './spanLabels.ts';
import { type Span, spansOf } from './spans.ts';

/** Places that still get a bar each. */
const MOST_BARS = 12;
const PLACE_WIDTH = 4.7;

type Room = {
  readonly id: string;
  readonly title: string;
  readonly shortTitle: string;
  /** null: unlimited. */
  readonly places: number | null;
  readonly note: string;
  readonly verb: string;
  readonly family: Column['family'];
  readonly tasks: readonly Task[];
};

function placesNote(spans: readonly Span[], places: number | null, window: TimeWindow, book: Book): Note {
  const inWindow = spans.filter((span) => shows(window, { start: span.start, end: span.heldUntil }));
  const { trays, minute } = fullest(inWindow);
  const most = `most ${trays}${places === null ? '' : ` of ${places}`}`;
  return note(`${most}, ${book.clock.shows(Math.max(minute, window.from))}`, most);
}

function roomColumn(room: Room, book: Book): Column {
  const spans = spansOf(book.plan, book.kinds, book.chain, room.tasks);
  const most = fullest(spans).trays;
  const places = room.places ?? Math.max(1, most);
  // Places that stay empty all day need no lane; the head says how many there are.
  const lanes = Math.max(1, ...spans.map((span) => span.position + span.positions - 1));
  const isBars = lanes <= MOST_BARS && room.tasks.every((task) => task.place !== undefined);
  const words = {
    verb: room.verb,
    since: book.since,
    labels: (span: Span) => stayLabels(span),
    along: (span: Span) => [{ text: span.kind.name, size: 2.8 }],
  };
  return {
    id: room.id,
    family: room.family,
    title: room.title,
    shortTitle: room.shortTitle,
    notes: (window) => [...(room.note === '' ? [] : [note(room.note)]), placesNote(spans, room.places, window, book)],
    minWidth: isBars ? Math.max(20, lanes * PLACE_WIDTH) : 26,
    wishWidth: isBars ? Math.max(22, lanes * PLACE_WIDTH * 1.3) : 44,
    mayBeLeftAway: false,
    isNeeded: (window) => spans.some((span) => shows(window, { start: span.start, end: span.heldUntil })),
    draw: (area) =>
      isBars ? drawPositions(spans, lanes, area, words, book.clock) : drawProfile(spans, places, area, book.clock),
  };
}

type Cabinet = Plan['bakehouse']['proofers' | 'retarders'][number];

/** What a kind of cabinet is called, and what goes on in it. */
type CabinetWords = { readonly noun: string; readonly verb: string; readonly place: 'shelf' | 'retarder' };

const RETARDER: CabinetWords = { noun: 'retarder', verb: 'retard', place: 'retarder' };
const PROOFER: CabinetWords = { noun: 'proofer', verb: 'proof', place: 'shelf' };

function cabinetColumn(cabinet: Cabinet, index: number, { noun, verb, place }: CabinetWords, book: Book): Column {
  const { id, places, temperatureC } = cabinet;
  const room: Room = {
    id,
    title: withNoun(book.names.room(id), noun),
    shortTitle: `${noun.charAt(0).toUpperCase()}${noun.slice(1)} ${index + 1}`,
    places,
    note: temperatureC === undefined ? '' : `${temperatureC}\u00a0°C`,
    verb,
    family: 'rooms',
    tasks: book.plan.tasks.filter((task) => task.place?.kind === place && task.place.id === id),
  };
  return roomColumn(room, book);
}

/** Columns of the retarders, then the proofers. */
export function roomColumns(book: Book): readonly Column[] {
  const { retarders, proofers } = book.plan.bakehouse;
  return [
    ...retarders.map((cabinet, index) => cabinetColumn(cabinet, index, RETARDER, book)),
    ...proofers.map((cabinet, index) => cabinetColumn(cabinet, index, PROOFER, book)),
  ];
}

/** Column of the cooling rack. */
export function rackColumn(book: Book): Column {
  const places = book.plan.bakehouse.coolingRackTrays;
  const room: Room = {
    id: 'cooling-rack',
    title: 'Cooling',
    shortTitle: 'Cooling',
    places,
    note: '',
    verb: 'cool',
    family: 'shop',
    tasks: book.plan.tasks.filter((task) => task.step === 'cool'),
  };
  const column = roomColumn(room, book);
  // The rack is looked at least of all: it takes what the others leave.
  return { ...column, minWidth: Math.min(column.minWidth, 16), wishWidth: Math.min(column.wishWidth, 24), mayBeLeftAway: true };
}
