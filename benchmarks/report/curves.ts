// What the picture shows: the median over the scenarios that every searching planner was measured on, at each limit.
import type { Planner, Row } from '../planners/instance.ts';
import { above, entrantsOf, gapOf, rowOf, type Standing, standingsOf } from './standing.ts';

export type Point = { readonly seconds: number; readonly share: number };
export type Curve = { readonly planner: Planner; readonly points: readonly Point[] };
export type Curves = {
  readonly scenarios: number;
  readonly leastTrays: number;
  readonly mostTrays: number;
  readonly aboveBest: readonly Curve[];
  readonly gap: readonly Curve[];
};

/** The middle value; the upper of two. Infinity counts: half the scenarios must have a plan for a point to be there. */
function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.POSITIVE_INFINITY;
}

function curve(standings: readonly Standing[], planner: Planner, rows: readonly Row[], share: ShareOf): Curve {
  const limits = entrantsOf(rows).filter((entrant) => entrant.planner === planner);
  const points = limits.map((entrant) => {
    const shares = standings.map((standing) => {
      const row = rowOf(standing, entrant);
      return row === undefined || row.cost === null ? Number.POSITIVE_INFINITY : share(row, standing);
    });
    return { seconds: entrant.limitSeconds, share: median(shares) };
  });
  return { planner, points: points.filter((point) => Number.isFinite(point.share)) };
}

type ShareOf = (row: Row, standing: Standing) => number;

/** Curves of the scenarios from `leastTrays` on; null when nothing was measured side by side. */
export function curvesOf(rows: readonly Row[], leastTrays: number): Curves | null {
  const standings = standingsOf(rows).filter(({ trays, rows: mine }) => {
    return (
      trays >= leastTrays &&
      mine.some(({ planner }) => planner === 'cp-sat') &&
      mine.some(({ planner }) => planner === 'ovenward')
    );
  });
  if (standings.length === 0) return null;
  const sizes = standings.map(({ trays }) => trays);
  const best: ShareOf = (row, standing) => above(row.cost ?? 0, standing.best);
  return {
    scenarios: standings.length,
    leastTrays: Math.min(...sizes),
    mostTrays: Math.max(...sizes),
    aboveBest: (['rule', 'cp-sat', 'ovenward'] as const).map((planner) => curve(standings, planner, rows, best)),
    gap: (['cp-sat', 'ovenward'] as const).map((planner) => curve(standings, planner, rows, gapOf)),
  };
}
