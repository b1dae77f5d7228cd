// Columns of the dough side: bowls, dough in bulk and trays at rest, and the bench.
import type { Task } from '../model/plan.ts';
import { type Column, note } from './column.ts';
import type { Label } from './label.ts';
import { type BarWords, drawPositions, drawShared } from './positionsColumn.ts';
import { type Book, kilograms } from './sentences.ts';
import { mostAtOnce } from './shareWidth.ts';
import { shows } from './sheet.ts';
import { stayLabels } from './spanLabels.ts';
import { joinRuns, type Span, spansOf } from './spans.ts';

const MOST_PLACES = 12;

function isIn(spans: readonly Span[]): Column['isNeeded'] {
  return (window) => spans.some((span) => shows(window, { start: span.start, end: span.heldUntil }));
}

function spansWithin(book: Book, tasks: readonly Task[]): readonly Span[] {
  return spansOf(book.plan, book.kinds, book.chain, tasks);
}

/** A step that keeps no place ends when it ends. */
function released(spans: readonly Span[]): readonly Span[] {
  return spans.map((span) => ({ ...span, heldUntil: span.end }));
}

function mixLabels(span: Span, book: Book): readonly Label[] {
  const kg = kilograms(book.names.batchKg(span.tasks[0]?.batch ?? ''));
  const pairs: readonly Label[] = [span.kind.name, span.kind.tag].flatMap((name) =>
    [3.5, 3.1, 2.8, 2.5].map((size) => [
      { text: name, size, bold: true },
      { text: kg, size },
    ]),
  );
  return [...pairs, ...stayLabels(span)];
}

/** One column for every bowl. */
export function bowlColumns(book: Book): readonly Column[] {
  const mixes = book.plan.tasks.filter((task) => task.step === 'mix');
  const column = (id: string, title: string, shortTitle: string, size: string, tasks: readonly Task[]): Column => {
    const spans = released(spansWithin(book, tasks));
    const words: BarWords = { verb: 'mix', labels: (span) => mixLabels(span, book), since: book.since };
    const lanes = Math.min(4, Math.max(1, mostAtOnce(spans)));
    return {
      id,
      family: 'dough',
      title,
      shortTitle,
      notes: () => (size === '' ? [] : [note(`bowl ${size}`, size)]),
      minWidth: 13 * lanes,
      wishWidth: 17 * lanes,
      mayBeLeftAway: false,
      isNeeded: isIn(spans),
      draw: (area) => drawShared(spans, area, words, book.clock),
    };
  };
  const bowls = book.plan.bakehouse.mixers.map((mixer, index) =>
    column(
      mixer.id,
      book.names.mixer(mixer.id),
      `Bowl ${index + 1}`,
      kilograms(mixer.bowlKg),
      mixes.filter((task) => task.place?.id === mixer.id),
    ),
  );
  const others = mixes.filter((task) => task.place === undefined);
  return others.length === 0 ? bowls : [...bowls, column('mixing', 'Mixing', 'Mixing', '', others)];
}

/** Dough in bulk and trays at rest: in the room, in no counted place. */
export function bulkColumn(book: Book): Column {
  const tasks = book.plan.tasks.filter((task) => task.place === undefined && (task.step === 'bulk' || task.step === 'rest'));
  const loose = book.plan.tasks.filter((task) => task.place === undefined && (task.step === 'proof' || task.step === 'retard'));
  const spans = released(spansWithin(book, [...tasks, ...loose]));
  const lanes = Math.min(6, Math.max(1, mostAtOnce(spans)));
  const words: BarWords = {
    verb: 'leave in the room',
    since: book.since,
    labels: (span) => stayLabels(span),
    along: (span) => [{ text: span.kind.name, size: 2.8 }],
  };
  return {
    id: 'bulk',
    family: 'dough',
    title: 'Bulk',
    shortTitle: 'Bulk',
    notes: () => (tasks.some((task) => task.step === 'rest') ? [note('and rest')] : [note('in the room')]),
    minWidth: Math.max(14, lanes * 4.5),
    wishWidth: Math.max(16, lanes * 6),
    mayBeLeftAway: false,
    isNeeded: isIn(spans),
    draw: (area) => drawShared(spans, area, words, book.clock),
  };
}

const BENCH_STEPS: ReadonlySet<string> = new Set(['divide', 'shape', 'finish', 'fold']);

/** The bench, one lane for each place. */
export function benchColumn(book: Book): Column {
  const tasks = book.plan.tasks.filter((task) => BENCH_STEPS.has(task.step));
  const stays = released(spansWithin(book, tasks));
  const places = book.plan.bakehouse.benchPlaces;
  const isPlaced = places !== null && places <= MOST_PLACES && tasks.every((task) => task.place !== undefined);
  const spans = isPlaced ? joinRuns(stays) : stays;
  // Places nobody works at all day need no lane.
  const used = Math.max(1, ...spans.map((span) => span.position));
  const lanes = isPlaced ? used : Math.min(8, Math.max(1, mostAtOnce(spans)));
  const hasPeople = book.plan.bakehouse.people.length > 0;
  const words: BarWords = { verb: 'bench', labels: (span) => stayLabels(span, span.tasks[0]?.step ?? ''), since: book.since };
  return {
    id: 'bench',
    family: 'dough',
    title: 'Bench',
    shortTitle: 'Bench',
    notes: () => (places === null ? [] : [note(`${places} ${places === 1 ? 'place' : 'places'}`)]),
    minWidth: Math.max(14, lanes * (hasPeople ? 6.5 : 11)),
    wishWidth: Math.max(15, lanes * (hasPeople ? 9 : 24)),
    mayBeLeftAway: false,
    isNeeded: isIn(spans),
    draw: (area) => (isPlaced ? drawPositions(spans, used, area, words, book.clock) : drawShared(spans, area, words, book.clock)),
  };
}
