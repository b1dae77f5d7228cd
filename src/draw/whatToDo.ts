// The list of what to do when: who, by the clock, what in words. Printed on the sheet and shown by anything that reads a plan.
import type { Plan } from '../model/plan.ts';
import { bookOf } from './bookOf.ts';
import { deckHeatOf, degrees } from './deckHeat.ts';
import type { Doing } from './doing.ts';
import { mergeStints } from './mergeStints.ts';
import { movesBetweenRooms } from './movesBetweenRooms.ts';
import { type Book, countByProduct, sentenceOf } from './sentences.ts';
import { type Stint, stintsOf } from './stints.ts';

/** Taking out says when the tray is cool, so the cooling is told with it. */
function taskIdsOf(book: Book, stint: Stint): readonly string[] {
  const cooling = stint.does === 'unload' ? stint.tasks.map((task) => book.chain.after(task)) : [];
  const cooled = cooling.filter((task) => task?.step === 'cool');
  return [...stint.tasks, ...cooled].flatMap((task) => (task === undefined ? [] : [task.id]));
}

/** How a piece of work was planned before: when, where, or by whom. Taking out follows the bake, so its time says nothing. */
function wasOf({ since, clock, names }: Book, { tasks, start, does }: Stint): { readonly was?: string } {
  const moved = tasks.find((task) => since?.hasMoved(task) === true);
  if (since === undefined || moved === undefined || start < since.now) return {};
  const who = since.whoWas(moved, does);
  const shift = since.shiftOf(moved);
  if (does === 'unload') return who === undefined ? {} : { was: who };
  const when = shift === 0 ? [] : [clock.shows(start - shift)];
  const where = since.whereWas(moved);
  const was = [...when, ...(where === undefined ? [] : [names.deck(where)]), ...(who === undefined ? [] : [who])];
  return was.length === 0 ? {} : { was: was.join(', ') };
}

/** What is new of a piece of work, as text to compare; trays moved by as much are told in one line. */
function changeOf({ since }: Book, { tasks, does }: Stint): string {
  const moved = tasks.find((task) => since?.hasMoved(task) === true);
  if (since === undefined || moved === undefined) return '';
  return JSON.stringify([since.shiftOf(moved), since.whereWas(moved) ?? '', since.whoWas(moved, does) ?? '']);
}

function handwork(book: Book): readonly Doing[] {
  return mergeStints(stintsOf(book.plan), (stint) => changeOf(book, stint)).map((stint) => {
    const [task] = stint.tasks;
    const products = countByProduct(stint.tasks).map(({ product, trays }) => ({ id: product, sort: 'product' as const, trays }));
    const dough = { id: book.kinds.ofBatch(task?.batch ?? '').id, sort: 'dough' as const, trays: 0 };
    return {
      minute: stint.start,
      untilMinute: stint.end,
      clock: book.clock.shows(stint.start),
      who: stint.person === null ? null : { id: stint.person, name: book.names.person(stint.person) },
      does: stint.does,
      what: sentenceOf(book, stint),
      handles: products.length > 0 ? products : [dough],
      ...(task?.place === undefined ? {} : { placeId: task.place.id }),
      ...wasOf(book, stint),
      taskIds: taskIdsOf(book, stint),
    };
  });
}

function heat(book: Book): readonly Doing[] {
  return book.plan.decks.flatMap(({ id }) =>
    deckHeatOf(book.plan, id).moves.map((move) => {
      const way = move.toC > move.fromC ? 'up' : 'down';
      const verb = move.isFirst && way === 'up' ? `heat ${book.names.deck(id)}` : `turn ${book.names.deck(id)} ${way}`;
      return {
        minute: move.start,
        untilMinute: move.start,
        clock: book.clock.shows(move.start),
        who: null,
        does: move.isFirst ? ('heat' as const) : ('change heat' as const),
        what: `${verb} from ${degrees(move.fromC)} to ${degrees(move.toC)}, there at ${book.clock.says(move.end)}`,
        handles: [],
        placeId: id,
        taskIds: [],
      };
    }),
  );
}

function breaks(book: Book): readonly Doing[] {
  return book.plan.bakehouse.people.flatMap((person) =>
    person.breaks.map((pause) => ({
      minute: pause.start,
      untilMinute: pause.end,
      clock: book.clock.shows(pause.start),
      who: { id: person.id, name: book.names.person(person.id) },
      does: 'break' as const,
      what: `break until ${book.clock.says(pause.end)}`,
      handles: [],
      taskIds: [],
    })),
  );
}

/** Order of the day when several things begin at once: heat first, then out of the oven, then into it, then the rest. */
const FIRST = ['heat', 'change heat', 'unload', 'load'];

function rank(doing: Doing): number {
  const place = FIRST.indexOf(doing.does);
  return place === -1 ? FIRST.length : place;
}

function byClock(a: Doing, b: Doing): number {
  return (
    a.minute - b.minute ||
    (a.who?.name ?? '').localeCompare(b.who?.name ?? '', 'en') ||
    rank(a) - rank(b) ||
    a.what.localeCompare(b.what, 'en')
  );
}

/** Everything to do in a plan, by the clock. Breaks outside the day are left away. */
export function whatToDo(plan: Plan): readonly Doing[] {
  const book = bookOf(plan);
  const pauses = breaks(book).filter(({ minute, untilMinute }) => untilMinute > 0 && minute < plan.day.minutes);
  return [...heat(book), ...handwork(book), ...movesBetweenRooms(book), ...pauses].sort(byClock);
}
