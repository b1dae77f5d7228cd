// A day whose work is one pair of hands: used by the tests of the beam.
import type { Demand, Link, ShopProblem, ShopTask } from '../../../src/solver/problem.ts';
import { EMPTY, mandatory, whole } from '../shops.ts';

/** Work of the hands during so many time units from an edge of a task on. */
const byHand = (edge: 'start' | 'end', length: number): Demand => ({
  ...whole([0]),
  from: { edge, offset: 0 },
  until: { edge, offset: length },
});

/** Jobs made ready by hand, waiting on a shelf, in an oven of two places and taken out by hand; the wait is limited. */
export function handsDay(jobs: readonly (readonly [work: number, wait: number, stay: number, state: number])[]): ShopProblem {
  const horizon = 400;
  const tasks: ShopTask[] = [];
  const links: Link[] = [];
  const after = (from: number, to: number): Link => ({ from, fromEdge: 'end', to, toEdge: 'start', min: 0, max: 0 });
  const task = (id: string, minDuration: number, maxDuration: number, demands: readonly Demand[]): ShopTask => ({
    id,
    minDuration,
    maxDuration,
    earliestStart: 0,
    latestEnd: horizon,
    demands,
  });
  jobs.forEach(([work, wait, stay, state], j) => {
    const first = tasks.length;
    tasks.push(task(`work ${j}`, work, work, [byHand('start', work)]));
    tasks.push(task(`wait ${j}`, wait, wait + 10, [whole([1])]));
    const inside = { chambers: [0], low: state, high: state + 10, room: 1, before: 0, after: 1 };
    tasks.push({ ...task(`stay ${j}`, stay, stay + 3, [byHand('start', 1), byHand('end', 1)]), stay: inside });
    links.push(after(first, first + 1), after(first + 1, first + 2));
  });
  return {
    ...EMPTY,
    horizon,
    tasks,
    links,
    pools: [
      {
        id: 'hands',
        capacity: 1,
        open: [
          [0, 60],
          [70, horizon],
        ],
      },
      { id: 'shelf', capacity: 3, open: [[0, horizon]] },
    ],
    chambers: [{ id: 'oven', room: 2, min: 0, max: 300, initial: 0, riseRate: 10, fallRate: 5, together: false }],
    units: jobs.map((_, j) => mandatory(`job ${j}`, 3 * j + 2)),
  };
}

export const JOBS = [
  [8, 20, 15, 200],
  [6, 30, 20, 240],
  [9, 15, 12, 200],
  [5, 25, 18, 240],
  [7, 20, 10, 200],
] as const;
