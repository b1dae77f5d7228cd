// The notes at the top of the first page: how good the plan is, what comes of the day, and what was left out and why.
import { type Label, labelSize, placeLabel } from './label.ts';
import { leftOutWords } from './leftOutWords.ts';
import { orderWordsOf } from './orderWords.ts';
import { BODY } from './pageFrame.ts';
import { dayWords, priceWords } from './priceWords.ts';
import type { Book } from './sentences.ts';
import { el, group, type SvgNode } from './svg.ts';
import { INK, PAPER } from './typeSize.ts';
import { wrapText } from './wrapText.ts';

const SIZE = 3.3;
/** Lines of left-out and late notes before the rest goes to the list pages. */
const MOST_LINES = 9;

export type FirstNotes = {
  readonly nodes: readonly SvgNode[];
  readonly height: number;
  /** Whether the left-out notes are shortened here, so that a list page must have them whole. */
  readonly isShortened: boolean;
};

type Warning = { readonly lines: readonly string[]; readonly isLeftOut: boolean };

function warningsOf(book: Book): readonly Warning[] {
  const width = BODY.width - 4;
  const leftOut = leftOutWords(book.plan).map((words) => ({ lines: wrapText(words, width, SIZE, true), isLeftOut: true }));
  const late = orderWordsOf(book)
    .filter(({ order }) => (order.lateMinutes ?? 0) > 0)
    .map(({ sentence }) => ({ lines: wrapText(`Late: ${sentence}`, width, SIZE, true), isLeftOut: false }));
  return [...leftOut, ...late];
}

function fitted(warnings: readonly Warning[]): { readonly lines: readonly string[]; readonly isShortened: boolean } {
  const lines: string[] = [];
  let shownLeftOut = 0;
  for (const { lines: own, isLeftOut } of warnings) {
    if (lines.length + own.length > MOST_LINES) break;
    lines.push(...own);
    if (isLeftOut) shownLeftOut += 1;
  }
  const leftOut = warnings.filter(({ isLeftOut }) => isLeftOut).length;
  const isAll = lines.length === warnings.reduce((sum, { lines: own }) => sum + own.length, 0);
  return {
    lines: isAll ? lines : [...lines, 'More is late or left out: see the list pages.'],
    isShortened: shownLeftOut < leftOut,
  };
}

/** What the marks of a day planned anew mean. */
function anewWords({ since, clock }: Book): string {
  if (since === undefined) return '';
  return `Planned anew at ${clock.says(since.now)}: a bold edge is a change, with what it was; pale is over. `;
}

/** Notes for the first page. */
export function firstNotes(book: Book): FirstNotes {
  const summary: Label = wrapText(
    `${anewWords(book)}${dayWords(book.plan, book.clock)} ${priceWords(book.plan)}`,
    BODY.width,
    SIZE,
  ).map((text) => ({
    text,
    size: SIZE,
  }));
  const warnings = fitted(warningsOf(book));
  const label: Label = warnings.lines.map((text) => ({ text, size: SIZE, bold: true }));
  const boxHeight = warnings.lines.length === 0 ? 0 : labelSize(label).height + 1.6;
  const summaryHeight = labelSize(summary).height;
  const box = { x: BODY.x, y: BODY.y + summaryHeight + 0.8, width: BODY.width, height: boxHeight };
  const warning = [
    el('rect', { ...box, fill: PAPER, stroke: INK, 'stroke-width': 0.8 }),
    ...placeLabel(label, BODY.x + 2, box.y + 0.8),
  ];
  return {
    nodes: [
      group('how good the plan is', placeLabel(summary, BODY.x, BODY.y)),
      ...(boxHeight === 0 ? [] : [group('late or left out', warning)]),
    ],
    height: summaryHeight + 1 + (boxHeight === 0 ? 0 : boxHeight + 1.6),
    isShortened: warnings.isShortened,
  };
}
