// What a schedule costs, counted from its times alone. Used to hold what a planner says of its own schedule against it.
import type { Cost } from '../../src/solver/cost.ts';
import { countedChanges } from '../../src/solver/moves.ts';
import type { Schedule, ShopProblem } from '../../src/solver/problem.ts';

type Mark = { readonly task: number; readonly edge: 'start' | 'end'; readonly offset: number };

/** The time of a mark; null when its task is omitted. */
function timeOf(schedule: Schedule, { task, edge, offset }: Mark): number | null {
  const at = (edge === 'start' ? schedule.start : schedule.end)[task] ?? -1;
  return at < 0 ? null : at + offset;
}

function latenessOf(problem: ShopProblem, schedule: Schedule): number {
  return problem.families.reduce((price, family, f) => {
    const ready = problem.units
      .flatMap((unit) => (unit.family === f && unit.ready !== null ? (timeOf(schedule, unit.ready) ?? []) : []))
      .sort((a, b) => a - b);
    return price + ready.reduce((sum, at, k) => sum + family.latePrice * Math.max(0, at - (family.dues[k] ?? at)), 0);
  }, 0);
}

function changesOf(problem: ShopProblem, schedule: Schedule): number {
  return problem.chambers.reduce((sum, chamber, c) => {
    const stays = problem.tasks.flatMap(({ stay }, task) => {
      if (stay === undefined || schedule.chamber[task] !== c) return [];
      const { low, high, room } = stay;
      return [{ task, start: schedule.start[task] ?? -1, end: schedule.end[task] ?? -1, low, high, room }];
    });
    return sum + countedChanges(chamber, schedule.moves[c] ?? [], stays);
  }, 0);
}

/** The price of a schedule in which every task without a unit is planned. */
export function priceOf(problem: ShopProblem, schedule: Schedule): Cost {
  const { prices } = problem;
  const counted = problem.units.flatMap((unit) =>
    unit.ready === null ? [] : [{ at: timeOf(schedule, unit.ready), omission: unit.omissionPrice }],
  );
  const ready = counted.flatMap(({ at }) => at ?? []);
  const omissions = counted.flatMap(({ at, omission }) => (at === null ? [omission] : []));
  const makespan = Math.max(0, ...ready);
  const marks = problem.firstMarks.flatMap((mark) => timeOf(schedule, mark) ?? []);
  const firstMark = marks.length === 0 ? 0 : Math.min(...marks);
  const lateness = latenessOf(problem, schedule);
  const changes = changesOf(problem, schedule);
  const span = makespan - (prices.fromFirstMark ? firstMark : 0);
  const omission = omissions.reduce((sum, price) => sum + price, 0);
  const total = lateness + omission + prices.makespan * span + prices.stateChange * changes;
  const sumReady = ready.reduce((sum, at) => sum + at, 0);
  return { total, lateness, omitted: omissions.length, makespan, firstMark, changes, moved: 0, sumReady, missing: 0 };
}
