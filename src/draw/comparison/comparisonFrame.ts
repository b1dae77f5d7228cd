// The frame of every page of a comparison: title and date at the head, advice and page number at the foot. Used by drawComparison.
import type { Comparison } from '../../model/comparison.ts';
import { hatchPattern } from '../hatch.ts';
import { type Label, labelSize, placeLabel } from '../label.ts';
import { type Box, SHEET } from '../sheet.ts';
import { el, render, type SvgNode } from '../svg.ts';
import { INK, PAPER, TYPE } from '../typeSize.ts';
import { wrapText } from '../wrapText.ts';
import { MARKS } from './marks.ts';

const HEAD_HEIGHT = 10.5;
const FOOT_HEIGHT = 5;

/** The room between head and foot. */
export const ROOM: Box = {
  x: SHEET.margin,
  y: SHEET.margin + HEAD_HEIGHT,
  width: SHEET.width - 2 * SHEET.margin,
  height: SHEET.height - 2 * SHEET.margin - HEAD_HEIGHT - FOOT_HEIGHT,
};

const ADVICE = 'Found by planning each day; what is proved says so. It is advice: your own oven, dough and people come first.';

function title(text: string, width: number): Label {
  for (const size of [TYPE.title, 4.4, 3.6])
    if (wrapText(text, width, size, true).length === 1) return [{ text, size, bold: true }];
  return wrapText(text, width, TYPE.note, true).map((line) => ({ text: line, size: TYPE.note, bold: true }));
}

/** SVG text of a page; `number` counts from 1. */
export function frame(comparison: Comparison, body: readonly SvgNode[], describes: string, number: number, of: number): string {
  const { width, height, margin } = SHEET;
  const { scenario } = comparison;
  const right: Label = [{ text: scenario.date, size: TYPE.title, bold: true }];
  const name = `${scenario.name}: ${comparison.sweep === null ? 'what changes would bring' : comparison.sweep.place}`;
  const foot = height - margin - FOOT_HEIGHT + 1;
  const line = (y: number, weight: number): SvgNode =>
    el('line', { x1: margin, y1: y, x2: width - margin, y2: y, stroke: INK, 'stroke-width': weight });
  return render(
    el(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        width: `${width}mm`,
        height: `${height}mm`,
        viewBox: `0 0 ${width} ${height}`,
        'font-family': 'sans-serif',
        role: 'img',
        'aria-label': `${name}, page ${number} of ${of}`,
      },
      [
        el('title', {}, [name]),
        el('desc', {}, [describes]),
        el(
          'defs',
          {},
          MARKS.map(({ hatch, colour }) => hatchPattern(hatch, colour)),
        ),
        el('rect', { x: 0, y: 0, width, height, fill: PAPER }),
        ...placeLabel(title(name, ROOM.width - labelSize(right).width - 6), margin, margin),
        ...placeLabel(right, width - margin, margin, 'end'),
        line(ROOM.y - 2, 0.6),
        ...body,
        line(foot - 0.6, 0.25),
        ...placeLabel([{ text: ADVICE, size: 2.6 }], margin, foot + 0.4),
        ...placeLabel([{ text: `page ${number} of ${of}`, size: 3.2, bold: true }], width - margin, foot, 'end'),
      ],
    ),
  );
}
