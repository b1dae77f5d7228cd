// The line across a chart page at the minute it was when the rest of the day was planned anew.
import type { Area } from './sheet.ts';
import { el, type SvgNode } from './svg.ts';
import { INK, PAPER } from './typeSize.ts';

/** Drawn over the columns, white under black, so that it is seen on any ground; `left` and `right` are where it ends. */
export function nowLine(minute: number, area: Area, left: number, right: number): readonly SvgNode[] {
  const { from, until } = area.window;
  if (minute < from || minute >= until) return [];
  const y = area.y(minute);
  const line = { x1: left, y1: y, x2: right, y2: y };
  return [
    el('line', { ...line, stroke: PAPER, 'stroke-width': 1.5 }),
    el('line', { ...line, stroke: INK, 'stroke-width': 0.8, 'stroke-dasharray': '4 1' }),
  ];
}
