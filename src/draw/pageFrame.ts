// The frame of every page: title and date at the head, advice and page number at the foot, names for screen readers.
import { hatchPattern } from './hatch.ts';
import type { Kind } from './kinds.ts';
import { type Label, labelSize, placeLabel } from './label.ts';
import { AWAY_ID } from './peopleColumns.ts';
import type { Book } from './sentences.ts';
import { type Box, SHEET } from './sheet.ts';
import { el, render, type SvgNode } from './svg.ts';
import { INK, PAPER, TYPE } from './typeSize.ts';
import { wrapText } from './wrapText.ts';

const ADVICE =
  'This plan is advice. Trust the dough, the bread and your own eyes first; law, safety rules and licensed trades come before it.';

/** One page before it knows how many there are. */
export type Page = {
  /** Large, at the right of the head: the hours of a chart page, or what a list page holds. */
  readonly subject: string;
  /** Under the title. */
  readonly under: string;
  readonly describes: string;
  readonly body: readonly SvgNode[];
  /** Hatches the page uses. */
  readonly kinds: readonly Kind[];
};

const HEAD_HEIGHT = 14.5;
const FOOT_HEIGHT = 5;

/** The room between head and foot. */
export const BODY: Box = {
  x: SHEET.margin,
  y: SHEET.margin + HEAD_HEIGHT,
  width: SHEET.width - 2 * SHEET.margin,
  height: SHEET.height - 2 * SHEET.margin - HEAD_HEIGHT - FOOT_HEIGHT,
};

function titleLabel(title: string, width: number): Label {
  for (const size of [TYPE.title, 5.2, 4.4, 3.6]) {
    const lines = wrapText(title, width, size, true);
    if (lines.length === 1) return [{ text: title, size, bold: true }];
  }
  return wrapText(title, width, 2.9, true).map((text) => ({ text, size: 2.9, bold: true }));
}

function headNodes(page: Page, book: Book): readonly SvgNode[] {
  const subject: Label = [{ text: page.subject, size: TYPE.title, bold: true }];
  const right = SHEET.width - SHEET.margin;
  const title = titleLabel(book.plan.scenario.name, BODY.width - labelSize(subject).width - 6);
  const under: Label = [{ text: page.under, size: TYPE.note }];
  const top = SHEET.margin;
  const y = BODY.y - 1.6;
  return [
    ...placeLabel(title, SHEET.margin, top + Math.max(0, 7.6 - labelSize(title).height) / 2),
    ...placeLabel(subject, right, top, 'end'),
    ...placeLabel(under, SHEET.margin, top + 8.4),
    el('line', { x1: SHEET.margin, y1: y, x2: right, y2: y, stroke: INK, 'stroke-width': 0.6 }),
  ];
}

function footNodes(number: number, of: number, cautions: string): readonly SvgNode[] {
  const y = SHEET.height - SHEET.margin - FOOT_HEIGHT + 1;
  const right = SHEET.width - SHEET.margin;
  const pages: Label = [{ text: `page ${number} of ${of}`, size: 3.2, bold: true }];
  return [
    el('line', { x1: SHEET.margin, y1: y - 0.6, x2: right, y2: y - 0.6, stroke: INK, 'stroke-width': 0.25 }),
    ...placeLabel([{ text: `${ADVICE}${cautions}`, size: 2.6 }], SHEET.margin, y + 0.4),
    ...placeLabel(pages, right, y, 'end'),
  ];
}

function awayPattern(): SvgNode {
  return el('pattern', { id: AWAY_ID, width: 2, height: 2, patternUnits: 'userSpaceOnUse' }, [
    el('rect', { x: 0, y: 0, width: 2, height: 2, fill: '#f2f2f2' }),
    el('line', { x1: -0.5, y1: 2.5, x2: 2.5, y2: -0.5, stroke: '#9a9a9a', 'stroke-width': 0.15 }),
  ]);
}

/** SVG text of a page; `number` counts from 1. `cautions` follows the advice at the foot. */
export function framePage(page: Page, number: number, of: number, cautions: string, book: Book): string {
  const { width, height } = SHEET;
  const title = `${book.plan.scenario.name}: ${page.subject}, page ${number} of ${of}`;
  return render(
    el(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        viewBox: `0 0 ${width} ${height}`,
        width: `${width}mm`,
        height: `${height}mm`,
        role: 'img',
        'aria-label': title,
        'font-family': 'sans-serif',
        'xml:lang': 'en',
      },
      [
        el('title', {}, [title]),
        el('desc', {}, [page.describes]),
        el('defs', {}, [awayPattern(), ...page.kinds.map((kind) => hatchPattern(kind.hatch, kind.colour))]),
        el('rect', { x: 0, y: 0, width, height, fill: PAPER }),
        ...headNodes(page, book),
        ...page.body,
        ...footNodes(number, of, cautions),
      ],
    ),
  );
}
