// SCORE: each figure stated = its recount; lowerBound <= cost; gap = (cost - lowerBound) / cost, 0 when cost is 0; and what the
// plan says it holds is what it holds.
import { toSixDecimals } from '../figures.ts';
import type { Figures, Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

/** Stated prices and gaps are rounded to 6 decimals. */
const TOLERANCE = 1e-6 + 1e-9;

const RECOUNTED = [
  'cost',
  'lateTrayMinutes',
  'leftOutTrays',
  'finishMinute',
  'temperatureChanges',
  'firstHandsOnMinute',
  'movedTasks',
] as const satisfies readonly (keyof Figures)[];

function differs(a: number, b: number): boolean {
  return !(Math.abs(a - b) <= TOLERANCE);
}

function boundSays(day: JudgedDay, cost: number): readonly string[] {
  const { lowerBound, gap } = day.plan.score ?? {};
  const says: string[] = [];
  if (lowerBound === undefined) return says;
  if (lowerBound > cost + TOLERANCE) says.push(`The lower bound stated, ${lowerBound}, is above the cost, ${cost}.`);
  const expected = cost === 0 ? 0 : toSixDecimals((cost - lowerBound) / cost);
  if (gap !== undefined && differs(gap, expected)) says.push(`The gap is stated as ${gap}; it is ${expected}.`);
  return says;
}

function holdsSays(day: JudgedDay, leftOutTrays: number): readonly string[] {
  const planned = day.trays.length;
  const counts = `${planned} trays are planned and ${leftOutTrays} left out`;
  switch (day.plan.holds) {
    case 'feasible':
      return leftOutTrays === 0 ? [] : [`The plan says it holds every tray; ${counts}.`];
    case 'partial':
      return leftOutTrays > 0 && planned > 0 ? [] : [`The plan says it holds some of the trays; ${counts}.`];
    case 'nothing':
      return planned === 0 ? [] : [`The plan says it holds nothing; ${counts}.`];
    case 'optimal': {
      const gap = day.plan.score?.gap;
      return gap === undefined || gap === 0 ? [] : [`The plan says it is optimal and states a gap of ${gap}.`];
    }
    case undefined:
      return [];
  }
}

export function score(day: JudgedDay, figures: Figures): readonly Finding[] {
  const stated = day.plan.score ?? {};
  const wrong = RECOUNTED.flatMap((name) => {
    const value = stated[name];
    const recount = figures[name] ?? 0;
    return value === undefined || !differs(value, recount)
      ? []
      : [`${name} is stated as ${value}; the recount gives ${recount}.`];
  });
  return [...wrong, ...boundSays(day, figures.cost), ...holdsSays(day, figures.leftOutTrays)].map((says) => ({
    says,
    taskIds: [],
  }));
}
