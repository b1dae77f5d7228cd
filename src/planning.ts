// From a scenario to a judged plan: compile, solve, read back, caution, check. A table of contents.
import { judge } from './check/judge.ts';
import { planOf } from './compile/planOf.ts';
import { compileScenario } from './compile/shopProblem.ts';
import { cautionsFor } from './explain/cautions.ts';
import { OwnFault } from './model/ownFault.ts';
import type { Plan } from './model/plan.ts';
import type { Scenario } from './model/scenario.ts';
import { type SolveProgress, solve } from './solver/solve.ts';

const VERSION = '0.1.0';

/** Rounds of search when no limit is given. */
export const DEFAULT_EFFORT = 20_000;

/** Milliseconds of a time limit kept for reading the plan back, judging and writing it: at least, and as a share. */
const LEAST_RESERVE_MS = 120;
const RESERVE_SHARE = 0.06;

export type Progress = {
  readonly seconds: number;
  readonly cost: number;
  readonly lowerBound: number;
  readonly gap: number;
  readonly plannedTrays: number;
  readonly trays: number;
  readonly rounds: number;
};

export type PlanningOptions = {
  /** Seed of the search. Default 1. */
  readonly seed?: number;
  /** Rounds of search at most. Default: no limit when seconds are given, else DEFAULT_EFFORT. */
  readonly effort?: number;
  /** Seconds from `startedAtMs` within which the plan is to be in hand. Default: no limit. */
  readonly seconds?: number;
  /** A clock in milliseconds. */
  readonly now: () => number;
  /** When the limit began to count, by the same clock. Default: when planning begins. */
  readonly startedAtMs?: number;
  readonly cancelled?: () => boolean;
  readonly onProgress?: (progress: Progress) => void;
  readonly pause?: () => Promise<void>;
  /** Version to write into the plan. Default: this program's. */
  readonly version?: string;
};

function limitsOf(options: PlanningOptions, startedAtMs: number): { rounds: number; untilMs: number } {
  const { seconds, effort } = options;
  const rounds = effort ?? (seconds === undefined ? DEFAULT_EFFORT : Number.POSITIVE_INFINITY);
  if (seconds === undefined) return { rounds, untilMs: Number.POSITIVE_INFINITY };
  const reserveMs = Math.max(LEAST_RESERVE_MS, RESERVE_SHARE * seconds * 1000);
  return { rounds, untilMs: startedAtMs + seconds * 1000 - reserveMs };
}

/** Plans a scenario that has been read. Every plan it returns has passed the judge; OwnFault otherwise. */
export async function makePlan(scenario: Scenario, options: PlanningOptions): Promise<Plan> {
  const startedAtMs = options.startedAtMs ?? options.now();
  const seed = options.seed ?? 1;
  const compiled = compileScenario(scenario);
  const trays = compiled.trays.length;
  const onProgress = ({ cost, bound, rounds }: SolveProgress): void => {
    const lowerBound = Math.min(cost.total, bound.value);
    const gap = cost.total === 0 ? 0 : (cost.total - lowerBound) / cost.total;
    const seconds = (options.now() - startedAtMs) / 1000;
    options.onProgress?.({ seconds, cost: cost.total, lowerBound, gap, plannedTrays: trays - cost.omitted, trays, rounds });
  };
  const solution = await solve(compiled.problem, seed, limitsOf(options, startedAtMs), {
    now: options.now,
    isCancelled: options.cancelled ?? (() => false),
    pause: options.pause ?? (() => Promise.resolve()),
    onProgress,
  });
  const seconds = Math.round((options.now() - startedAtMs) / 10) / 100;
  const bare = planOf(scenario, compiled, solution, { seed, seconds, version: options.version ?? VERSION });
  const plan: Plan = { ...bare, cautions: [...cautionsFor(scenario, bare.tasks)] };
  const { breaches } = judge(scenario, plan);
  if (breaches.length > 0)
    throw new OwnFault(
      'The plan broke a rule',
      breaches.map((breach) => `${breach.rule}: ${breach.says}`),
    );
  return plan;
}
