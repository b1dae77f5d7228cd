// Puts spans that overlap in time side by side: those in one crowd share the width evenly, a lonely one has all of it.
import type { Span } from './spans.ts';

export type Placed = {
  readonly span: Span;
  /** Left edge and width as parts of the whole, 0 to 1. */
  readonly left: number;
  readonly width: number;
};

function placeCrowd(crowd: readonly Span[]): readonly Placed[] {
  const laneEnds: number[] = [];
  const lanes = crowd.map((span) => {
    const free = laneEnds.findIndex((end) => end <= span.start);
    const lane = free === -1 ? laneEnds.length : free;
    laneEnds[lane] = span.heldUntil;
    return lane;
  });
  const width = 1 / laneEnds.length;
  return crowd.map((span, index) => ({ span, left: (lanes[index] ?? 0) * width, width }));
}

/** Every span with its share of the width. */
export function shareWidth(spans: readonly Span[]): readonly Placed[] {
  const sorted = [...spans].sort((a, b) => a.start - b.start || a.end - b.end);
  const placed: Placed[] = [];
  let crowd: Span[] = [];
  let crowdEnd = Number.NEGATIVE_INFINITY;
  for (const span of sorted) {
    if (span.start >= crowdEnd) {
      placed.push(...placeCrowd(crowd));
      crowd = [];
    }
    crowd.push(span);
    crowdEnd = Math.max(crowdEnd, span.heldUntil);
  }
  return [...placed, ...placeCrowd(crowd)];
}

/** The most spans that lie side by side at any time. */
export function mostAtOnce(spans: readonly Span[]): number {
  return Math.max(0, ...shareWidth(spans).map(({ width }) => Math.round(1 / width)));
}
