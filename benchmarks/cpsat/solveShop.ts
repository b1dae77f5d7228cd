// Runs CP-SAT (or-tools-wasm) on our model of a shop problem: first with every unit planned, which is the easier model, and
// when that is proved impossible with units that may be left out.
import { CpSat, type Response } from 'or-tools-wasm/cp-sat';
import type { Schedule, ShopProblem } from '../../src/solver/problem.ts';
import { momentAt, momentsOf } from './searchLog.ts';
import { type ShopModel, shopModel } from './shopModel.ts';

export type CpSatLimits = { readonly seconds: number; readonly workers: number; readonly seed: number };

/** What CP-SAT held after so many seconds of its own clock. */
export type Held = {
  readonly atSeconds: number;
  readonly schedule: Schedule | null;
  readonly cost: number | null;
  /** Proved floor of its model; 0: none. */
  readonly lowerBound: number;
};

export type CpSatRun = {
  readonly isProved: boolean;
  /** Seconds it worked, by its own clock. */
  readonly seconds: number;
  /** Processor seconds it got, all threads together. */
  readonly cpuSeconds: number;
  /** One for each mark, in their order. */
  readonly held: readonly Held[];
};

type Answer = {
  readonly response: Response;
  readonly solutions: ReadonlyMap<number, readonly number[]>;
  readonly cpuSeconds: number;
};

async function ask(model: object, limits: CpSatLimits): Promise<Answer> {
  const bytes = await CpSat.createModel(model);
  const { ok, message } = await CpSat.validate(bytes);
  if (!ok) throw new Error(`CP-SAT refuses the model: ${message}`);
  const solutions = new Map<number, readonly number[]>();
  const keep = ({ solution, objectiveValue }: Response): void => {
    if (solution !== undefined && objectiveValue !== undefined) solutions.set(objectiveValue, solution.map(Number));
  };
  const parameters = {
    maxTimeInSeconds: limits.seconds,
    numWorkers: limits.workers,
    randomSeed: limits.seed,
    logSearchProgress: true,
    logToResponse: true,
    logToStdout: false,
  };
  const before = process.cpuUsage();
  const { response } = await CpSat.solve(bytes, parameters, { onSolution: keep });
  const { user, system } = process.cpuUsage(before);
  if (response === null) throw new Error('CP-SAT gave no answer');
  if ((response.solution?.length ?? 0) > 0) keep(response);
  return { response, solutions, cpuSeconds: (user + system) / 1e6 };
}

/** Least price of leaving a unit out: a schedule that does costs at least as much. */
function cheapestOmission(problem: ShopProblem): number {
  return Math.min(...problem.units.filter((unit) => unit.ready !== null).map((unit) => unit.omissionPrice));
}

/** What was held at a mark: the last answer once the solver is done, before that what the log tells. */
function heldAt({ response, solutions }: Answer, model: ShopModel, most: number, mark: number): Held {
  const isDone = mark >= (response.wallTime ?? 0);
  const moment = momentAt(momentsOf(response.solveLog ?? ''), mark);
  const known = [...solutions.keys()].filter((cost) => isDone || cost >= moment.best);
  const cost = known.length === 0 ? null : Math.min(...known);
  const solution = cost === null ? undefined : solutions.get(cost);
  const floor = isDone ? (response.bestObjectiveBound ?? 0) : moment.floor;
  return {
    atSeconds: mark,
    schedule: solution === undefined ? null : model.scheduleOf(solution),
    cost,
    lowerBound: Math.max(0, Math.min(floor, most)),
  };
}

const isOptimal = ({ cost, lowerBound }: Held): boolean => cost !== null && cost <= lowerBound;

/** Solves within the limits and tells what was held at each mark (seconds, ascending, the last the limit). */
export async function solveShop(problem: ShopProblem, limits: CpSatLimits, marks: readonly number[]): Promise<CpSatRun> {
  const whole = shopModel(problem, false);
  const first = await ask(whole.model, limits);
  const firstSeconds = first.response.wallTime ?? 0;
  // Of schedules that leave something out the first model knows nothing but what they cost at least.
  const isImpossible = first.response.status === 'INFEASIBLE';
  const most = cheapestOmission(problem);
  const held = marks.map((mark) => {
    return isImpossible ? { atSeconds: mark, schedule: null, cost: null, lowerBound: 0 } : heldAt(first, whole, most, mark);
  });
  const isOver = first.response.status === 'OPTIMAL' || isImpossible;
  if (!isOver || held.some(isOptimal) || firstSeconds >= limits.seconds)
    return { isProved: held.some(isOptimal), seconds: firstSeconds, cpuSeconds: first.cpuSeconds, held };
  const partial = shopModel(problem, true);
  const second = await ask(partial.model, { ...limits, seconds: limits.seconds - firstSeconds });
  const better = held.map((before) => {
    const after = heldAt(second, partial, Number.POSITIVE_INFINITY, before.atSeconds - firstSeconds);
    const best = (after.cost ?? Number.POSITIVE_INFINITY) < (before.cost ?? Number.POSITIVE_INFINITY) ? after : before;
    return { ...best, atSeconds: before.atSeconds, lowerBound: Math.max(before.lowerBound, after.lowerBound) };
  });
  return {
    isProved: better.some(isOptimal),
    seconds: firstSeconds + (second.response.wallTime ?? 0),
    cpuSeconds: first.cpuSeconds + second.cpuSeconds,
    held: better,
  };
}
