// The column of the shop: a mark at each time orders are wanted, and in words what is ready and what is late.
import { type Column, note } from './column.ts';
import { type Label, labelSize, placeOnPage } from './label.ts';
import { type OrderWords, orderWordsOf } from './orderWords.ts';
import type { Book } from './sentences.ts';
import type { Area, TimeWindow } from './sheet.ts';
import { spreadAll } from './spread.ts';
import { el, type SvgNode } from './svg.ts';
import { timeWindows } from './timeWindows.ts';
import { INK, TYPE } from './typeSize.ts';
import { wrapText } from './wrapText.ts';

const MARK_WIDTH = 3.4;
const NOTE = 2.9;
const LONGEST_LEAD = 18;

type Due = { readonly minute: number; readonly orders: readonly OrderWords[] };

function duesIn(words: readonly OrderWords[]): readonly Due[] {
  const dues = new Map<number, OrderWords[]>();
  for (const word of words) {
    const due = dues.get(word.minute);
    if (due === undefined) dues.set(word.minute, [word]);
    else due.push(word);
  }
  return [...dues].map(([minute, orders]) => ({ minute, orders }));
}

type Wording = (due: Due, width: number, book: Book, window: TimeWindow) => Label;

function head(due: Due, book: Book, window: TimeWindow): Label {
  const time: Label = [{ text: `for ${book.clock.shows(due.minute)}`, size: TYPE.far, bold: true }];
  if (due.minute >= window.until) return [...time, { text: 'after these hours:', size: 2.6 }];
  return due.minute < window.from ? [...time, { text: 'before these hours:', size: 2.6 }] : time;
}

function inFull(due: Due, width: number, book: Book, window: TimeWindow): Label {
  const lines = due.orders.flatMap((word) =>
    wrapText(`${word.order.pieces} ${word.product}: ${word.outcome}`, width, NOTE, word.isLate).map((text) => ({
      text,
      size: NOTE,
      bold: word.isLate,
    })),
  );
  return [...head(due, book, window), ...lines];
}

function inTags(due: Due, width: number, book: Book, window: TimeWindow): Label {
  const lines = due.orders.flatMap((word) =>
    wrapText(`${word.order.pieces} ${word.tag} ${word.outcome}`, width, 2.6, word.isLate).map((text) => ({
      text,
      size: 2.6,
      bold: word.isLate,
    })),
  );
  return [...head(due, book, window), ...lines];
}

function inSum(due: Due, width: number, book: Book, window: TimeWindow): Label {
  const late = due.orders.filter(({ isLate }) => isLate).length;
  const orders = `${due.orders.length} ${due.orders.length === 1 ? 'order' : 'orders'}`;
  const words = `${orders}: ${late === 0 ? 'all ready in time' : `${late} late or not complete`}; see the list`;
  return [
    ...head(due, book, window),
    ...wrapText(words, width, NOTE, late > 0).map((text) => ({ text, size: NOTE, bold: late > 0 })),
  ];
}

/** From the fullest to the shortest. */
const WORDINGS: readonly Wording[] = [inFull, inTags, inSum];

/** The mark on the clock; an order wanted before or after the page's hours has none. */
function mark(due: Due, area: Area, top: number): readonly SvgNode[] {
  if (due.minute < area.window.from || due.minute >= area.window.until) return [];
  const y = area.y(due.minute);
  const { x } = area.box;
  const middle = top + (TYPE.far * 1.2) / 2;
  const arrow = el('path', { d: `M${x.toFixed(2)} ${y.toFixed(2)} l2 -1.3 l0 2.6 Z`, fill: INK });
  // A block pushed far from its mark names its time; a line across the page would only cross others.
  if (Math.abs(middle - y) > LONGEST_LEAD) return [arrow];
  return [arrow, el('line', { x1: x + 2, y1: y, x2: x + MARK_WIDTH - 0.2, y2: middle, stroke: INK, 'stroke-width': 0.4 })];
}

function drawDues(words: readonly OrderWords[], area: Area, book: Book): readonly SvgNode[] {
  const { box } = area;
  const width = box.width - MARK_WIDTH - 0.5;
  const dues = duesIn(words);
  for (const wording of WORDINGS) {
    const labels = dues.map((due) => wording(due, width, book, area.window));
    // The head of a block stands level with its mark.
    const wanted = labels.map((label, index) => ({
      ideal: area.y(dues[index]?.minute ?? 0) - (TYPE.far * 1.2) / 2,
      height: labelSize(label).height + 1,
    }));
    const tops = spreadAll(wanted, box.y, box.y + box.height);
    if (tops === null) continue;
    return dues.map((due, index) => {
      const top = tops[index] ?? box.y;
      const says = due.orders.map(({ sentence }) => sentence).join('; ');
      return el('g', { role: 'group', 'aria-label': says }, [
        ...mark(due, area, top),
        ...placeOnPage(labels[index] ?? [], box.x + MARK_WIDTH, top),
      ]);
    });
  }
  // More times than the page is high: the marks alone, every order stands in the list.
  return dues.map((due) => el('g', { role: 'group', 'aria-label': 'orders' }, mark(due, area, area.y(due.minute) - 2.6)));
}

/** Orders of a window: those wanted in it or since the window before; the last window takes all that are wanted later. */
function wordsIn(words: readonly OrderWords[], windows: readonly TimeWindow[], window: TimeWindow): readonly OrderWords[] {
  const index = windows.findIndex(({ from }) => from === window.from);
  const after = index <= 0 ? Number.NEGATIVE_INFINITY : (windows[index - 1]?.until ?? 0);
  const before = index === windows.length - 1 ? Number.POSITIVE_INFINITY : window.until;
  return words.filter(({ minute }) => minute >= after && minute < before);
}

/** The shop's column. */
export function ordersColumn(book: Book): Column {
  const words = orderWordsOf(book);
  const windows = timeWindows(book.plan, book.clock);
  return {
    id: 'orders',
    family: 'shop',
    title: 'Orders',
    shortTitle: 'Orders',
    notes: () => [note('wanted by')],
    minWidth: 32,
    wishWidth: 46,
    mayBeLeftAway: false,
    isNeeded: (window) => wordsIn(words, windows, window).length > 0,
    draw: (area) => drawDues(wordsIn(words, windows, area.window), area, book),
  };
}
