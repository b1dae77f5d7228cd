// Bars side by side by position: shelves of a small proofer, bench places, bowls, places on a deck.
import { type Bar, drawBar } from './bar.ts';
import type { DayClock } from './dayClock.ts';
import type { Label } from './label.ts';
import { shareWidth } from './shareWidth.ts';
import { type Area, type Box, shows } from './sheet.ts';
import type { SinceBefore } from './sinceBefore.ts';
import type { Span } from './spans.ts';
import { el, type SvgNode } from './svg.ts';
import { GREY_INK } from './typeSize.ts';

export type BarWords = {
  readonly labels: (span: Span) => readonly Label[];
  readonly along?: (span: Span) => Label;
  /** What is new and what is past, on a day planned anew. */
  readonly since?: SinceBefore | undefined;
  /** What is done, for screen readers: "proof", "bake". */
  readonly verb: string;
};

/** How a bar is marked on a day planned anew. */
function marksOf(span: Span, { since }: BarWords, clock: DayClock): Pick<Bar, 'was' | 'isPast'> {
  const [task] = span.tasks;
  if (since === undefined || task === undefined) return {};
  if (Math.max(span.end, span.heldUntil) <= since.now) return { isPast: true };
  const shift = since.shiftOf(task);
  // A bake's label says when it is out, so it is told when it was to be out.
  const was = task.step === 'bake' && shift !== 0 ? clock.shows(span.end - shift) : since.was(task);
  return was === undefined ? {} : { was };
}

/** The sentence a screen reader says of a bar. */
function saysOf(span: Span, words: BarWords, clock: DayClock): string {
  const trays = span.tasks[0]?.tray === undefined ? '' : `, ${span.trays} ${span.trays === 1 ? 'tray' : 'trays'}`;
  const { was } = marksOf(span, words, clock);
  const before = was === undefined ? '' : `, was ${was}`;
  return `${words.verb} ${span.kind.name}${trays}, ${clock.says(span.start)} to ${clock.says(span.end)}${before}`;
}

function barOf(span: Span, x: number, width: number, words: BarWords, clock: DayClock): Bar {
  return {
    start: span.start,
    end: span.end,
    heldUntil: span.heldUntil,
    x,
    width,
    kind: span.kind,
    taskIds: span.tasks.map(({ id }) => id),
    says: saysOf(span, words, clock),
    labels: words.labels(span),
    ...(words.along === undefined ? {} : { along: words.along(span) }),
    ...marksOf(span, words, clock),
  };
}

function rails(box: Box, places: number): readonly SvgNode[] {
  return Array.from({ length: places + 1 }, (_, index) => {
    const x = box.x + (box.width * index) / places;
    return el('line', { x1: x, y1: box.y, x2: x, y2: box.y + box.height, stroke: GREY_INK, 'stroke-width': 0.12 });
  });
}

/** Bars at their own positions, 1 to `places`. */
export function drawPositions(
  spans: readonly Span[],
  places: number,
  area: Area,
  words: BarWords,
  clock: DayClock,
): readonly SvgNode[] {
  const { box, window } = area;
  const each = box.width / places;
  const bars = spans
    .filter((span) => shows(window, { start: span.start, end: span.heldUntil }))
    .map((span) => drawBar(barOf(span, box.x + (span.position - 1) * each, each * span.positions, words, clock), area));
  return [...rails(box, places), ...bars];
}

/** Bars that share the width with whatever lies beside them in time. */
export function drawShared(spans: readonly Span[], area: Area, words: BarWords, clock: DayClock): readonly SvgNode[] {
  const { box, window } = area;
  const bars = shareWidth(spans.filter((span) => shows(window, { start: span.start, end: span.heldUntil }))).map(
    ({ span, left, width }) => drawBar(barOf(span, box.x + left * box.width, width * box.width, words, clock), area),
  );
  return [...rails(box, 1), ...bars];
}
