// Draws a plan as A4-landscape pages for the bakery wall: charts first, then what to do when, orders and cautions.
import type { Plan } from '../model/plan.ts';
import { bookOf } from './bookOf.ts';
import { chartPages } from './chartPages.ts';
import { firstNotes } from './firstNotes.ts';
import { listPages } from './listPages.ts';
import { framePage } from './pageFrame.ts';
import { PAST_MINUTES } from './timeWindows.ts';
import { whatToDo } from './whatToDo.ts';

/** One SVG text for each page. The same plan gives the same bytes. */
export function drawPlan(plan: Plan): readonly string[] {
  const book = bookOf(plan);
  const past = book.since === undefined ? Number.NEGATIVE_INFINITY : book.since.now - PAST_MINUTES;
  // What has long been over on a day planned anew is nobody's to do.
  const doings = whatToDo(plan).filter(({ untilMinute }) => untilMinute > past);
  const notes = firstNotes(book);
  const charts = chartPages(book, doings, notes);
  const lists = listPages(book, doings, notes.isShortened);
  const pages = [...charts, ...lists.pages];
  const cautions = lists.cautionPage === undefined ? '' : ` Take care: page ${charts.length + lists.cautionPage}.`;
  return pages.map((page, index) => framePage(page, index + 1, pages.length, cautions, book));
}
