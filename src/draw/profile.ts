// How full a big room is, minute by minute: a stack of bands, one for each product, as wide as its trays.
import type { DayClock } from './dayClock.ts';
import { hatchId } from './hatch.ts';
import type { Kind } from './kinds.ts';
import { inSizes, type Label, labelSize, placeLabel } from './label.ts';
import { tint } from './palette.ts';
import { type Area, shows } from './sheet.ts';
import type { Span } from './spans.ts';
import { el, type SvgNode } from './svg.ts';
import { GREY_INK, INK } from './typeSize.ts';

/** One stretch of minutes in which a band keeps its width. */
type Slice = { readonly start: number; readonly end: number; readonly left: number; readonly trays: number };

function traysAt(spans: readonly Span[], minute: number): number {
  return spans.reduce((sum, span) => (span.start <= minute && minute < span.heldUntil ? sum + span.trays : sum), 0);
}

/** Most trays at once, and the first minute it happens. */
export function fullest(spans: readonly Span[]): { readonly trays: number; readonly minute: number } {
  return spans.reduce(
    (best, { start }) => {
      const trays = traysAt(spans, start);
      return trays > best.trays || (trays === best.trays && start < best.minute) ? { trays, minute: start } : best;
    },
    { trays: 0, minute: 0 },
  );
}

function kindsIn(spans: readonly Span[]): readonly Kind[] {
  return [...new Set([...spans].sort((a, b) => a.start - b.start).map((span) => span.kind))];
}

function slicesOf(spans: readonly Span[], area: Area): ReadonlyMap<Kind, readonly Slice[]> {
  const { from, until } = area.window;
  const inside = spans.flatMap((span) => [span.start, span.heldUntil]).filter((minute) => minute > from && minute < until);
  const edges = [...new Set([from, ...inside, until])].sort((a, b) => a - b);
  const kinds = kindsIn(spans);
  const slices = new Map<Kind, Slice[]>(kinds.map((kind) => [kind, []]));
  edges.slice(0, -1).forEach((start, index) => {
    let left = 0;
    for (const kind of kinds) {
      const trays = traysAt(
        spans.filter((span) => span.kind === kind),
        start,
      );
      slices.get(kind)?.push({ start, end: edges[index + 1] ?? until, left, trays });
      left += trays;
    }
  });
  return slices;
}

/** Stretches in which the band is not empty. */
function runsOf(slices: readonly Slice[]): readonly (readonly Slice[])[] {
  const runs: Slice[][] = [];
  slices.forEach((slice, index) => {
    if (slice.trays === 0) return;
    const open = index > 0 && (slices[index - 1]?.trays ?? 0) > 0 ? runs.at(-1) : undefined;
    if (open === undefined) runs.push([slice]);
    else open.push(slice);
  });
  return runs;
}

function outline(run: readonly Slice[], area: Area, perTray: number): string {
  const x = (trays: number) => (area.box.x + trays * perTray).toFixed(2);
  const y = (minute: number) => area.y(minute).toFixed(2);
  const down = run.flatMap((s) => [`${x(s.left)} ${y(s.start)}`, `${x(s.left)} ${y(s.end)}`]);
  const up = [...run].reverse().flatMap((s) => [`${x(s.left + s.trays)} ${y(s.end)}`, `${x(s.left + s.trays)} ${y(s.start)}`]);
  return `M${[...down, ...up].join(' L')} Z`;
}

type Spot = { readonly x: number; readonly y: number; readonly label: Label };

/** The first place down the band where the label lies inside it at its whole height. */
function spotFor(
  run: readonly Slice[],
  area: Area,
  perTray: number,
  labels: readonly ((trays: number) => Label)[],
): Spot | undefined {
  const [first] = run;
  if (first === undefined) return undefined;
  const bottom = area.y(run.at(-1)?.end ?? first.end);
  for (const labelFor of labels) {
    for (let y = area.y(first.start) + 0.3; y < bottom; y += 0.8) {
      const height = labelSize(labelFor(1)).height;
      if (y + height > bottom - 0.2) break;
      const crossed = run.filter((slice) => area.y(slice.start) < y + height && area.y(slice.end) > y);
      const left = Math.max(...crossed.map((slice) => slice.left));
      const right = Math.min(...crossed.map((slice) => slice.left + slice.trays));
      const label = labelFor(Math.max(...crossed.map((slice) => slice.trays)));
      if ((right - left) * perTray < labelSize(label).width + 0.5) continue;
      return { x: area.box.x + ((left + right) / 2) * perTray, y, label };
    }
  }
  return undefined;
}

function band(kind: Kind, spans: readonly Span[], run: readonly Slice[], area: Area, perTray: number, clock: DayClock): SvgNode {
  const most = Math.max(...run.map((slice) => slice.trays));
  const [start, end] = [run[0]?.start ?? 0, run.at(-1)?.end ?? 0];
  const says = `${kind.name}, up to ${most} trays, ${clock.says(start)} to ${clock.says(end)}`;
  const own = spans.filter((span) => span.kind === kind && shows({ from: start, until: end }, span));
  const tasks = own.flatMap((span) => span.tasks.map(({ id }) => id)).join(' ');
  const sizes = [3.5, 3.1, 2.8, 2.5];
  const labels = [
    ...sizes.slice(0, 2).map(
      (size) =>
        (trays: number): Label => [{ text: `${trays} ${kind.name}`, size, bold: true }],
    ),
    ...sizes.map(
      (size) =>
        (trays: number): Label => [{ text: `${trays} ${kind.tag}`, size, bold: true }],
    ),
    ...inSizes(kind.tag, sizes, true).map((label) => () => label),
  ];
  const spot = spotFor(run, area, perTray, labels);
  const size = spot === undefined ? undefined : labelSize(spot.label);
  return el('g', { role: 'group', 'aria-label': says, 'data-bar': kind.key, 'data-tasks': tasks }, [
    el('path', {
      d: outline(run, area, perTray),
      fill: `url(#${hatchId(kind.hatch, kind.colour)})`,
      stroke: INK,
      'stroke-width': 0.25,
    }),
    ...(spot === undefined || size === undefined
      ? []
      : [
          el('rect', { x: spot.x - size.width / 2, y: spot.y, width: size.width, height: size.height, fill: tint(kind.colour) }),
          ...placeLabel(spot.label, spot.x, spot.y, 'middle'),
        ]),
  ]);
}

/** Bands of a room with room for `places` trays. */
export function drawProfile(spans: readonly Span[], places: number, area: Area, clock: DayClock): readonly SvgNode[] {
  const { box, window } = area;
  const shown = spans.filter((span) => shows(window, { start: span.start, end: span.heldUntil }));
  const perTray = box.width / Math.max(1, places);
  const frame = [0, 1].map((side) =>
    el('line', {
      x1: box.x + side * box.width,
      y1: box.y,
      x2: box.x + side * box.width,
      y2: box.y + box.height,
      stroke: GREY_INK,
      'stroke-width': side === 1 ? 0.5 : 0.12,
    }),
  );
  const bands = [...slicesOf(shown, area)].flatMap(([kind, slices]) =>
    runsOf(slices).map((run) => band(kind, shown, run, area, perTray, clock)),
  );
  return [...frame, ...bands];
}
