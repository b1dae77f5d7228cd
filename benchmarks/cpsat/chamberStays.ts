// Chambers of a shop problem: each stay an optional interval on every chamber that may take it, room as a capacity, and
// for two stays on one chamber that share no state the time the chamber needs from one range to the other.
// Pairs suffice: a path with limited rates through time windows with ranges exists exactly when it does for every two of
// them (the extension of a Lipschitz function: McShane 1934, Bulletin of the AMS 40). The state at the start is one more.
import type { Chamber, ShopProblem } from '../../src/solver/problem.ts';
import { type ModelDraft, not } from './modelDraft.ts';
import type { ShopTimes, TaskTimes } from './taskTimes.ts';

/** Per task: the chambers it may stay in, with the literal that says so. */
export type ChamberChoice = readonly { readonly chamber: number; readonly chosen: number }[];

/** Room for rounding in divisions of degrees. */
const EPSILON = 1e-9;

type Range = { readonly low: number; readonly high: number };

/** Whole time units a chamber needs from one range to another; 0 when they share a state. */
function travel(chamber: Chamber, from: Range, to: Range): number {
  if (to.low > from.high) return Math.ceil((to.low - from.high) / chamber.riseRate - EPSILON);
  if (to.high < from.low) return Math.ceil((from.low - to.high) / chamber.fallRate - EPSILON);
  return 0;
}

const within = (chamber: Chamber, range: Range): Range => ({
  low: Math.max(range.low, chamber.min),
  high: Math.min(range.high, chamber.max),
});

const isApart = (a: Range, b: Range): boolean => a.low > b.high || b.low > a.high;

type Placed = { readonly task: number; readonly times: TaskTimes; readonly range: Range; readonly choices: ChamberChoice };

function placeStays(draft: ModelDraft, problem: ShopProblem, times: ShopTimes): Placed[] {
  const usesOfChamber: { interval: number; amount: number }[][] = problem.chambers.map(() => []);
  const placed = problem.tasks.flatMap((task, i): Placed[] => {
    const own = times.tasks[i];
    if (task.stay === undefined || own === undefined) return [];
    const { stay } = task;
    const choices = stay.chambers.map((chamber) => ({ chamber, chosen: draft.literal() }));
    draft.oneOf(
      choices.map(({ chosen }) => chosen),
      own.present,
    );
    for (const { chamber, chosen } of choices) {
      const spec = problem.chambers[chamber];
      if (spec === undefined) continue;
      const interval = draft.interval(own.start, own.size, own.end, [...own.present, chosen]);
      usesOfChamber[chamber]?.push({ interval, amount: stay.room });
      const warmUp = travel(spec, { low: spec.initial, high: spec.initial }, within(spec, stay));
      draft.between([[own.start, 1]], warmUp, problem.horizon, [...own.present, chosen]);
    }
    return [{ task: i, times: own, range: stay, choices }];
  });
  problem.chambers.forEach((chamber, c) => {
    const uses = usesOfChamber[c] ?? [];
    if (uses.length > 0) draft.capacity(chamber.room, uses);
  });
  return placed;
}

function separate(draft: ModelDraft, problem: ShopProblem, a: Placed, b: Placed): void {
  let isBefore: number | null = null;
  for (const { chamber, chosen } of a.choices) {
    const other = b.choices.find((choice) => choice.chamber === chamber);
    const spec = problem.chambers[chamber];
    if (other === undefined || spec === undefined) continue;
    const first = within(spec, a.range);
    const second = within(spec, b.range);
    if (!isApart(first, second)) continue;
    isBefore ??= draft.literal();
    const both = [...new Set([...a.times.present, ...b.times.present]), chosen, other.chosen];
    draft.lag(a.times.end, b.times.start, travel(spec, first, second), problem.horizon, [...both, isBefore]);
    draft.lag(b.times.end, a.times.start, travel(spec, second, first), problem.horizon, [...both, not(isBefore)]);
  }
}

/** Adds all chambers. Returns, per task, where it may stay; empty for one without a stay. */
export function addChambers(draft: ModelDraft, problem: ShopProblem, times: ShopTimes): readonly ChamberChoice[] {
  const placed = placeStays(draft, problem, times);
  placed.forEach((a, i) => {
    for (const b of placed.slice(i + 1)) separate(draft, problem, a, b);
  });
  const choiceOfTask = new Map(placed.map(({ task, choices }) => [task, choices]));
  return problem.tasks.map((_, i) => choiceOfTask.get(i) ?? []);
}
