// A bar: pale ground and hatch of its kind, with the best label that fits inside. Columns are made of bars.

import { hatchId } from './hatch.ts';
import type { Kind } from './kinds.ts';
import { firstThatFits, type Label, labelSize, placeLabel } from './label.ts';
import { tint } from './palette.ts';
import type { Area, Box } from './sheet.ts';
import { el, type SvgNode } from './svg.ts';
import { INK } from './typeSize.ts';

export type Bar = {
  readonly start: number;
  /** Excluded. */
  readonly end: number;
  /** Where in the column it lies, in mm from the left of the page. */
  readonly x: number;
  readonly width: number;
  readonly kind: Kind;
  /** Tasks of the plan it shows. */
  readonly taskIds: readonly string[];
  /** What a screen reader says. */
  readonly says: string;
  /** Best first; all of them may fail to fit. */
  readonly labels: readonly Label[];
  /** Written upwards in a slim bar, under its upright label, when there is room. */
  readonly along?: Label;
  /** How it was planned before, when it has moved: a time, a place, a person. It is drawn with a bold edge then. */
  readonly was?: string;
  /** Whether it is over already on a day planned anew; it is drawn pale then. */
  readonly isPast?: boolean;
  /** Minutes it keeps its place after the end, shown as an empty tail; excluded. */
  readonly heldUntil?: number;
};

const GAP = 0.25;
const PAD = 0.5;
const SLIM = 11;
const EDGE = 0.25;
const BOLD_EDGE = 0.9;
const LEAST_BOLD_EDGE = 0.45;
const PALE = 0.4;
const WAS_SIZES = [2.8, 2.5] as const;

/** A low bar keeps some of its ground inside a bold edge. */
export function boldEdge(height: number): number {
  return Math.max(LEAST_BOLD_EDGE, Math.min(BOLD_EDGE, height * 0.2));
}

/** Labels with how it was under them, then those without. */
function withWas(bar: Bar): readonly Label[] {
  const { was } = bar;
  if (was === undefined || was === '') return bar.labels;
  const lines: readonly Label[] = [
    ...WAS_SIZES.map((size) => [{ text: `was ${was}`, size }]),
    [
      { text: 'was', size: 2.5 },
      { text: was, size: 2.5 },
    ],
  ];
  return [...lines.flatMap((line) => bar.labels.map((label) => [...label, ...line])), ...bar.labels];
}

function ground(bar: Bar, box: Box): readonly SvgNode[] {
  const hatch = `url(#${hatchId(bar.kind.hatch, bar.kind.colour)})`;
  const isSlim = box.width < SLIM;
  const edge = bar.was === undefined ? EDGE : boldEdge(box.height);
  const inset = (edge - EDGE) / 2;
  const strip = isSlim ? box.width : Math.min(4.5, box.width * 0.2);
  const { x, y, width, height } = box;
  const body = el('rect', { x, y, width, height, fill: tint(bar.kind.colour) });
  const hatched = el('rect', { x, y, width: strip, height, fill: hatch });
  const outline = el('rect', {
    x: x + inset,
    y: y + inset,
    width: Math.max(0.1, width - 2 * inset),
    height: Math.max(0.1, height - 2 * inset),
    fill: 'none',
    stroke: INK,
    'stroke-width': edge,
  });
  return isSlim ? [hatched, outline] : [body, hatched, outline];
}

function plate(bar: Bar, x: number, y: number, width: number, height: number): SvgNode {
  return el('rect', { x, y, width, height, fill: tint(bar.kind.colour) });
}

function alongText(bar: Bar, box: Box, from: number): readonly SvgNode[] {
  const label = bar.along;
  if (label === undefined) return [];
  const { width, height } = labelSize(label);
  if (height > box.width - 0.2 || width + 2 * PAD > box.y + box.height - from) return [];
  const middle = box.x + box.width / 2;
  const bottom = from + PAD + width;
  return [
    plate(bar, middle - height / 2, from, height, width + 2 * PAD),
    el(
      'g',
      { transform: `rotate(-90 ${middle.toFixed(2)} ${bottom.toFixed(2)})` },
      placeLabel(label, middle, bottom - height / 2),
    ),
  ];
}

function slimText(bar: Bar, box: Box): readonly SvgNode[] {
  const label = firstThatFits(withWas(bar), box.width - 0.3, box.height - 0.2);
  if (label === undefined) return alongText(bar, box, box.y + 0.5);
  const size = labelSize(label);
  const x = box.x + (box.width - size.width) / 2;
  const y = box.y + Math.min(0.4, (box.height - size.height) / 2);
  return [
    plate(bar, x, y, size.width, size.height),
    ...placeLabel(label, box.x + box.width / 2, y, 'middle'),
    ...alongText(bar, box, y + size.height + 1),
  ];
}

function wideText(bar: Bar, box: Box): readonly SvgNode[] {
  const strip = Math.min(4.5, box.width * 0.2);
  const label = firstThatFits(withWas(bar), box.width - strip - 2 * PAD, box.height - 0.2);
  if (label === undefined) return [];
  const y = box.y + Math.min(PAD, (box.height - labelSize(label).height) / 2);
  return placeLabel(label, box.x + strip + PAD, y);
}

/** Nodes of a bar that shows in the area. */
export function drawBar(bar: Bar, area: Area): SvgNode {
  const top = area.y(bar.start);
  const height = Math.max(0.5, area.y(bar.end) - top - GAP);
  const box = { x: bar.x + GAP / 2, y: top, width: Math.max(0.4, bar.width - GAP), height };
  const tailEnd = area.y(bar.heldUntil ?? bar.end) - GAP;
  const tail =
    tailEnd > top + height + 0.5
      ? [
          el('rect', {
            x: box.x,
            y: top + height,
            width: box.width,
            height: tailEnd - top - height,
            fill: 'none',
            stroke: INK,
            'stroke-width': 0.25,
            'stroke-dasharray': '0.8 0.6',
          }),
        ]
      : [];
  const attributes = {
    role: 'group',
    'aria-label': bar.says,
    'data-bar': bar.kind.key,
    'data-tasks': bar.taskIds.join(' '),
    opacity: bar.isPast === true ? PALE : undefined,
  };
  const text = box.width < SLIM ? slimText(bar, box) : wideText(bar, box);
  return el('g', attributes, [...ground(bar, box), ...tail, ...text]);
}
