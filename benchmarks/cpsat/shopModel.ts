// Our CP-SAT model of a shop problem, whole: times, pools, chambers, prices, and how a solution is read as a schedule.
// A straightforward interval model of the rules of src/solver/problem.ts, made for comparison; it shares no code with the search.
import type { HeldStay } from '../../src/solver/chamberLine.ts';
import { movesOf } from '../../src/solver/moves.ts';
import type { Schedule, ShopProblem } from '../../src/solver/problem.ts';
import { addChambers, type ChamberChoice } from './chamberStays.ts';
import { amountOf, isTrue, ModelDraft } from './modelDraft.ts';
import { addPools, type PoolChoice } from './poolUses.ts';
import { addPrices } from './prices.ts';
import type { Model } from './proto.ts';
import { type ShopTimes, shopTimes } from './taskTimes.ts';
import { orderTwins } from './twins.ts';

export type ShopModel = {
  readonly model: Model;
  readonly scheduleOf: (solution: readonly number[]) => Schedule;
};

/** What this model does not hold. Such a problem is refused, not bent. */
function mustHold(problem: ShopProblem): void {
  const { prices, chambers, units, families } = problem;
  if (chambers.some((chamber) => chamber.together)) throw new Error('CP-SAT model: chambers loaded together are not modelled');
  if (prices.stateChange > 0 && chambers.length > 0) throw new Error('CP-SAT model: priced changes of state are not modelled');
  const all = [
    prices.makespan,
    ...families.map(({ latePrice }) => latePrice),
    ...units.map(({ omissionPrice }) => omissionPrice),
  ];
  if (all.some((price) => Number.isFinite(price) && !Number.isInteger(price)))
    throw new Error('CP-SAT model: prices must be whole numbers');
}

function readSchedule(
  problem: ShopProblem,
  times: ShopTimes,
  pools: readonly PoolChoice[],
  chambers: readonly ChamberChoice[],
  solution: readonly number[],
): Schedule {
  const isPlanned = times.tasks.map(({ present }) => present.every((literal) => isTrue(literal, solution)));
  const start = times.tasks.map((task, i) => (isPlanned[i] ? amountOf(task.start, solution) : -1));
  const end = times.tasks.map((task, i) => (isPlanned[i] ? amountOf(task.end, solution) : -1));
  const chamber = chambers.map((choices, i) => {
    return isPlanned[i] ? (choices.find(({ chosen }) => isTrue(chosen, solution))?.chamber ?? -1) : -1;
  });
  const poolOf = (choices: PoolChoice[number]): number =>
    choices.find(({ chosen }) => chosen.every((literal) => isTrue(literal, solution)))?.pool ?? -1;
  const moves = problem.chambers.map((spec, c) => {
    const held = problem.tasks.flatMap((task, i): HeldStay[] => {
      if (task.stay === undefined || chamber[i] !== c) return [];
      const { low, high, room } = task.stay;
      return [{ task: i, start: start[i] ?? -1, end: end[i] ?? -1, low, high, room }];
    });
    return movesOf(
      spec,
      held.sort((a, b) => a.start - b.start),
      problem.horizon,
    );
  });
  return { start, end, pools: pools.map((demands, i) => demands.map((d) => (isPlanned[i] ? poolOf(d) : -1))), chamber, moves };
}

/** The model of a problem. `mayOmit`: units may be left out at their price; else all are planned. */
export function shopModel(problem: ShopProblem, mayOmit: boolean): ShopModel {
  mustHold(problem);
  const draft = new ModelDraft();
  const times = shopTimes(draft, problem, mayOmit);
  const pools = addPools(draft, problem, times);
  const chambers = addChambers(draft, problem, times);
  orderTwins(draft, problem, times);
  addPrices(draft, problem, times);
  return { model: draft.model(), scheduleOf: (solution) => readSchedule(problem, times, pools, chambers, solution) };
}
