// Draws a plan as A4-landscape pages for the bakery wall: charts first, then what to do when, orders and cautions.
import type { Plan } from '../model/plan.ts';
import { chartPages } from './chartPages.ts';
import { dayClockOf } from './dayClock.ts';
import { firstNotes } from './firstNotes.ts';
import { kindsOf } from './kinds.ts';
import { listPages } from './listPages.ts';
import { chainOf, namesOf } from './names.ts';
import { framePage } from './pageFrame.ts';
import type { Book } from './sentences.ts';
import { whatToDo } from './whatToDo.ts';

/** One SVG text for each page. The same plan gives the same bytes. */
export function drawPlan(plan: Plan): readonly string[] {
  const book: Book = { plan, clock: dayClockOf(plan), names: namesOf(plan), kinds: kindsOf(plan), chain: chainOf(plan) };
  const doings = whatToDo(plan);
  const notes = firstNotes(book);
  const charts = chartPages(book, doings, notes);
  const lists = listPages(book, doings, notes.isShortened);
  const pages = [...charts, ...lists.pages];
  const cautions = lists.cautionPage === undefined ? '' : ` Take care: page ${charts.length + lists.cautionPage}.`;
  return pages.map((page, index) => framePage(page, index + 1, pages.length, cautions, book));
}
