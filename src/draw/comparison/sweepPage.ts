// A sweep as two curves: trays on time, with what is not decided above them, and the price under them. Used by drawComparison.
import type { ComparedDay, Comparison } from '../../model/comparison.ts';
import { labelSize, placeLabel, placeOnPage } from '../label.ts';
import type { Box } from '../sheet.ts';
import { el, group, type SvgNode } from '../svg.ts';
import { GREY_INK, INK, TYPE } from '../typeSize.ts';
import { wrapText } from '../wrapText.ts';
import { ROOM } from './comparisonFrame.ts';
import { AS_IS, FOUND, fillOf, UNDECIDED } from './marks.ts';

const AXIS_WIDTH = 16;
const AXIS_HEIGHT = 7;
const TITLE_HEIGHT = 7;

/** `height` null: nobody looked. `beyond`: up to where it is not decided. */
type Point = { readonly value: number; readonly height: number | null; readonly beyond: number };
type Scale = { readonly x: (index: number) => number; readonly barWidth: number; readonly y: (height: number) => number };

/** A round step that gives about so many lines: 1, 2 or 5 times a power of ten, and whole. */
function stepFor(most: number, lines: number): number {
  const rough = Math.max(1, most / lines);
  const power = 10 ** Math.floor(Math.log10(rough));
  return [1, 2, 5, 10].map((times) => times * power).find((step) => step >= rough) ?? 10 * power;
}

function scaleOf(box: Box, points: readonly Point[], most: number): Scale {
  const slot = (box.width - AXIS_WIDTH) / points.length;
  const bottom = box.y + box.height - AXIS_HEIGHT;
  const top = box.y + TITLE_HEIGHT;
  return {
    x: (index) => box.x + AXIS_WIDTH + index * slot,
    barWidth: slot,
    y: (height) => bottom - (height / most) * (bottom - top),
  };
}

function lines(box: Box, scale: Scale, most: number): readonly SvgNode[] {
  const step = stepFor(most, 5);
  const heights = Array.from({ length: Math.floor(most / step) + 1 }, (_, index) => index * step);
  return heights.flatMap((height) => [
    el('line', {
      x1: box.x + AXIS_WIDTH,
      y1: scale.y(height),
      x2: box.x + box.width,
      y2: scale.y(height),
      stroke: height === 0 ? INK : '#bbbbbb',
      'stroke-width': height === 0 ? 0.4 : 0.15,
    }),
    ...placeLabel([{ text: String(height), size: TYPE.list }], box.x + AXIS_WIDTH - 2, scale.y(height) - TYPE.list * 0.65, 'end'),
  ]);
}

/** Bars that touch, so that their tops are the curve; its line is drawn bold over them. */
function bars(points: readonly Point[], scale: Scale, now: number): readonly SvgNode[] {
  return points.flatMap(({ value, height, beyond }, index) => {
    if (height === null) return [];
    const x = scale.x(index);
    const rect = (from: number, to: number, fill: string): SvgNode =>
      el('rect', { x, y: scale.y(to), width: scale.barWidth, height: scale.y(from) - scale.y(to), fill });
    return [
      group(`at ${value}: ${height}${beyond > height ? ` to ${beyond}` : ''}`, [
        rect(0, height, fillOf(value === now ? AS_IS : FOUND)),
        ...(beyond > height ? [rect(height, beyond, fillOf(UNDECIDED))] : []),
      ]),
    ];
  });
}

function curve(points: readonly Point[], scale: Scale): SvgNode {
  const steps = points.flatMap(({ height }, index) => {
    if (height === null) return [];
    const [x, y] = [scale.x(index), scale.y(height)];
    const isFirst = (points[index - 1]?.height ?? null) === null;
    return [`${isFirst ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)} L${(x + scale.barWidth).toFixed(2)} ${y.toFixed(2)}`];
  });
  return el('path', { d: steps.join(' '), fill: 'none', stroke: INK, 'stroke-width': 1 });
}

/** A number whose foot stands at a height, on white ground. */
function numberAbove(height: number, middle: number, foot: number, isBold: boolean): readonly SvgNode[] {
  const label = [{ text: String(height), size: isBold ? TYPE.far : TYPE.list, bold: isBold }];
  const size = labelSize(label);
  return placeOnPage(label, middle - size.width / 2, foot - size.height);
}

/** Values under the bars, what was found over the curve, and the end of what is not decided, as many as there is room for. */
function texts(box: Box, points: readonly Point[], scale: Scale, now: number): readonly SvgNode[] {
  const every = Math.ceil(11 / scale.barWidth);
  const own = points.findIndex(({ value }) => value === now);
  return points.flatMap(({ value, height, beyond }, index) => {
    const middle = scale.x(index) + scale.barWidth / 2;
    const isNearOwn = own >= 0 && Math.abs(index - own) < every;
    if (index !== own && (index % every !== 0 || isNearOwn)) return [];
    const foot = box.y + box.height - AXIS_HEIGHT + 0.6;
    const under = placeLabel([{ text: String(value), size: TYPE.far, bold: value === now }], middle, foot, 'middle');
    if (height === null) return under;
    const isClear = scale.y(height) - scale.y(beyond) > 2 * TYPE.far;
    return [
      ...under,
      ...numberAbove(height, middle, scale.y(height) - 0.9, true),
      ...(isClear ? numberAbove(beyond, middle, scale.y(beyond) - 0.4, false) : []),
    ];
  });
}

function chart(title: string, box: Box, points: readonly Point[], now: number): SvgNode {
  const most = Math.max(1, ...points.map(({ beyond }) => beyond)) * 1.12;
  const scale = scaleOf(box, points, most);
  return group(title, [
    ...placeLabel([{ text: title, size: TYPE.far, bold: true }], box.x, box.y),
    ...lines(box, scale, most),
    ...bars(points, scale, now),
    curve(points, scale),
    ...texts(box, points, scale, now),
  ]);
}

function capacityPoints(days: readonly ComparedDay[]): readonly Point[] {
  return days.flatMap(({ value, figures: { capacity } }): readonly Point[] => {
    if (value === null) return [];
    if (capacity === null) return [{ value, height: null, beyond: 0 }];
    return [{ value, height: capacity.foundTrays, beyond: capacity.limitTrays ?? capacity.foundTrays }];
  });
}

function pricePoints(days: readonly ComparedDay[]): readonly Point[] {
  return days.flatMap(({ value, figures: { score } }) => {
    const price = Math.round(score.cost);
    return value === null ? [] : [{ value, height: price, beyond: price }];
  });
}

function key(x: number, y: number): readonly SvgNode[] {
  const entries = [
    { mark: FOUND, text: 'found' },
    { mark: AS_IS, text: 'the day as it is' },
    { mark: UNDECIDED, text: 'not decided: above it, no plan' },
  ];
  return entries.flatMap(({ mark, text }, index) => [
    el('rect', { x: x + index * 62, y: y + 0.3, width: 7, height: 4, fill: fillOf(mark), stroke: INK, 'stroke-width': 0.25 }),
    ...placeLabel([{ text, size: TYPE.list }], x + 9 + index * 62, y),
  ]);
}

/** The body of the page. */
export function sweepPage(comparison: Comparison): readonly SvgNode[] {
  const { sweep, days } = comparison;
  if (sweep === null) return [];
  const words = wrapText(sweep.says, ROOM.width, TYPE.far).map((text) => ({ text, size: TYPE.far }));
  const top = ROOM.y + words.length * TYPE.far * 1.2 + 3;
  const trays = days.some(({ figures }) => figures.capacity !== null) ? capacityPoints(days) : [];
  const left = ROOM.y + ROOM.height - top - 8;
  const upper: Box = { x: ROOM.x, y: top, width: ROOM.width, height: left * 0.58 };
  const lower: Box = trays.length === 0 ? { ...upper, height: left } : { ...upper, y: top + left * 0.6, height: left * 0.4 };
  const of = days.find(({ figures }) => figures.capacity !== null)?.figures.capacity?.of ?? null;
  const title = `Trays ready on time${of === null ? '' : `, ${of} added`}, for each value of ${sweep.place}`;
  return [
    ...placeLabel(words, ROOM.x, ROOM.y),
    ...(trays.length === 0 ? [] : [chart(title, upper, trays, sweep.now)]),
    chart('Price of the day, by its goals: less is better', lower, pricePoints(days), sweep.now),
    ...key(ROOM.x, ROOM.y + ROOM.height - 6),
    el('line', { x1: ROOM.x, y1: top - 1.5, x2: ROOM.x + ROOM.width, y2: top - 1.5, stroke: GREY_INK, 'stroke-width': 0.15 }),
  ];
}
