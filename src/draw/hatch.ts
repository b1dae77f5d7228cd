// Hatches that stay different on a black-and-white print: twelve motifs in four strengths, as SVG patterns.
import { hatchInk, tint } from './palette.ts';
import { el, type SvgNode } from './svg.ts';

type Motif = (size: number, weight: number, ink: string) => readonly SvgNode[];

function line(x1: number, y1: number, x2: number, y2: number, weight: number, ink: string): SvgNode {
  return el('line', { x1, y1, x2, y2, stroke: ink, 'stroke-width': weight });
}

// A slanting line meets its copy in the next tile when it starts and ends outside the tile.
const rising: Motif = (s, w, ink) => [-1, 0, 1].map((k) => line((k - 0.5) * s, 1.5 * s, (k + 1.5) * s, -0.5 * s, w, ink));
const falling: Motif = (s, w, ink) => [-1, 0, 1].map((k) => line((k - 0.5) * s, -0.5 * s, (k + 1.5) * s, 1.5 * s, w, ink));
const level: Motif = (s, w, ink) => [line(0, s / 2, s, s / 2, w, ink)];
const upright: Motif = (s, w, ink) => [line(s / 2, 0, s / 2, s, w, ink)];

const MOTIFS: readonly Motif[] = [
  rising,
  (s, w, ink) => [el('circle', { cx: s / 2, cy: s / 2, r: s * 0.14 + w * 0.4, fill: ink })],
  level,
  falling,
  (s, w, ink) => [...level(s, w, ink), ...upright(s, w, ink)],
  upright,
  (s, w, ink) => [...rising(s, w, ink), ...falling(s, w, ink)],
  (s, w, ink) => [el('circle', { cx: s / 2, cy: s / 2, r: s * 0.28, fill: 'none', stroke: ink, 'stroke-width': w })],
  (s, w, ink) => [
    el('path', { d: `M0 ${s * 0.7} L${s / 2} ${s * 0.25} L${s} ${s * 0.7}`, fill: 'none', stroke: ink, 'stroke-width': w }),
  ],
  (s, w, ink) => [
    el('rect', { x: 0, y: 0, width: s / 2, height: s / 2, fill: ink, opacity: 0.35 + w }),
    el('rect', { x: s / 2, y: s / 2, width: s / 2, height: s / 2, fill: ink, opacity: 0.35 + w }),
  ],
  (s, w, ink) => [line(0, s * 0.25, s * 0.55, s * 0.25, w, ink), line(s * 0.45, s * 0.75, s, s * 0.75, w, ink)],
  (s, w, ink) => [
    el('path', {
      d: `M${s / 2} ${s * 0.2} L${s * 0.8} ${s * 0.75} L${s * 0.2} ${s * 0.75} Z`,
      fill: ink,
      stroke: ink,
      'stroke-width': w * 0.5,
    }),
  ],
];

/** Size of the tile and weight of the line, both in mm. */
const STRENGTHS = [
  { size: 1.5, weight: 0.22 },
  { size: 2.5, weight: 0.5 },
  { size: 2.9, weight: 0.2 },
  { size: 1.1, weight: 0.3 },
] as const;

/** How many hatches differ from each other; the next ones begin again. */
export const HATCHES = MOTIFS.length * STRENGTHS.length;

/** Name of the hatch's pattern; equal names are equal patterns. */
export function hatchId(hatch: number, colour: string): string {
  return `hatch-${hatch % HATCHES}-${colour.slice(1)}`;
}

/** The pattern: the pale ground of the colour under the motif. `hatch` counts from 0. */
export function hatchPattern(hatch: number, colour: string): SvgNode {
  const motif = MOTIFS[hatch % MOTIFS.length];
  const strength = STRENGTHS[Math.floor(hatch / MOTIFS.length) % STRENGTHS.length];
  if (motif === undefined || strength === undefined) throw new RangeError(`no hatch ${hatch}`);
  const { size, weight } = strength;
  return el('pattern', { id: hatchId(hatch, colour), width: size, height: size, patternUnits: 'userSpaceOnUse' }, [
    el('rect', { x: 0, y: 0, width: size, height: size, fill: tint(colour) }),
    ...motif(size, weight, hatchInk(colour)),
  ]);
}
