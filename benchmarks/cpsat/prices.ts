// What a schedule costs: makespan, lateness by dealing due times to units, omissions.
import type { Family, ShopProblem } from '../../src/solver/problem.ts';
import { type ModelDraft, not, plus, type Term, truth } from './modelDraft.ts';
import type { Affine } from './proto.ts';
import { edgeOf, type ShopTimes } from './taskTimes.ts';

type ReadyUnit = { readonly at: Affine; readonly present: readonly number[]; readonly family: number };

function readyUnits(problem: ShopProblem, times: ShopTimes): ReadyUnit[] {
  return problem.units.flatMap((unit, u) => {
    const task = unit.ready === null ? undefined : times.tasks[unit.ready.task];
    if (unit.ready === null || task === undefined) return [];
    const at = plus(edgeOf(task, unit.ready.edge), unit.ready.offset);
    return [{ at, present: times.unitPresent[u] ?? [], family: unit.family }];
  });
}

function payMakespan(draft: ModelDraft, problem: ShopProblem, times: ShopTimes, units: readonly ReadyUnit[]): void {
  const { prices, horizon } = problem;
  if (prices.makespan === 0) return;
  const makespan = draft.variable(0, horizon);
  for (const { at, present } of units) draft.lag(at, makespan, 0, horizon, present);
  draft.pay(makespan, prices.makespan);
  if (!prices.fromFirstMark || problem.firstMarks.length === 0) return;
  const first = draft.variable(0, horizon);
  draft.lag(first, makespan, 0, horizon);
  for (const mark of problem.firstMarks) {
    const task = times.tasks[mark.task];
    if (task !== undefined) draft.lag(first, plus(edgeOf(task, mark.edge), mark.offset), 0, horizon, task.present);
  }
  draft.pay(first, -prices.makespan);
}

/** Due times of a family, equal ones together, earliest first. */
function dueGroups(family: Family): { readonly due: number; readonly count: number }[] {
  const groups: { due: number; count: number }[] = [];
  for (const due of [...family.dues].sort((a, b) => a - b)) {
    const last = groups[groups.length - 1];
    if (last?.due === due) last.count++;
    else groups.push({ due, count: 1 });
  }
  return groups;
}

/**
 * The k-th unit to be ready takes the k-th due time. Of all ways to deal due times to units that one costs least (moving
 * an earlier due time to an earlier unit never costs more), so the solver may deal them as it likes.
 */
function payLateness(draft: ModelDraft, family: Family, units: readonly ReadyUnit[], horizon: number): void {
  if (family.latePrice === 0 || units.length === 0) return;
  const groups = dueGroups(family);
  const isShared = groups.length === 1;
  const dealt = units.map(({ at, present }) => {
    const late = draft.variable(0, horizon);
    draft.pay(late, family.latePrice);
    const takes = groups.map(({ due }) => {
      const when = isShared ? [] : [draft.literal()];
      draft.lag(at, late, -due, horizon, [...present, ...when]);
      return when;
    });
    if (!isShared) draft.oneOf(takes.flat(), present);
    // An omitted unit takes none.
    for (const literal of takes.flat()) for (const planned of present) draft.anyOf([planned], [literal]);
    return takes;
  });
  if (!isShared) countTakers(draft, groups, dealt);
}

type Dealt = readonly (readonly (readonly number[])[])[];

/** No due time is taken twice; a later one only when the earlier ones all are. */
function countTakers(draft: ModelDraft, groups: readonly { readonly count: number }[], dealt: Dealt): void {
  const takersOf = (g: number): number[] => dealt.flatMap((takes) => takes[g] ?? []);
  groups.forEach(({ count }, g) => {
    const taken = takersOf(g).map((literal): Term => [truth(literal), 1]);
    draft.between(taken, 0, count);
    for (const later of takersOf(g + 1)) draft.between(taken, count, count, [later]);
  });
}

/** Adds the whole price to what is minimised. */
export function addPrices(draft: ModelDraft, problem: ShopProblem, times: ShopTimes): void {
  const units = readyUnits(problem, times);
  payMakespan(draft, problem, times, units);
  problem.families.forEach((family, f) => {
    payLateness(
      draft,
      family,
      units.filter((unit) => unit.family === f),
      problem.horizon,
    );
  });
  problem.units.forEach((unit, u) => {
    for (const literal of times.unitPresent[u] ?? []) {
      if (unit.omissionPrice > 0 && unit.ready !== null) draft.pay(truth(not(literal)), unit.omissionPrice);
    }
  });
}
