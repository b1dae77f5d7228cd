// From a scenario to a judged plan: compile, solve, read back, caution, check. A table of contents.
import { judge } from './check/judge.ts';
import { type MayAsk, planOf } from './compile/planOf.ts';
import { sayChanges } from './compile/sayChanges.ts';
import { compileScenario } from './compile/shopProblem.ts';
import { startLayout } from './compile/startLayout.ts';
import { cautionsFor } from './explain/cautions.ts';
import { OwnFault } from './model/ownFault.ts';
import type { Plan } from './model/plan.ts';
import type { Scenario } from './model/scenario.ts';
import { type Solution, type SolveLimits, type SolveProgress, solve } from './solver/solve.ts';

/** Rounds of search when no limit is given. */
export const DEFAULT_EFFORT = 20_000;

/** Rounds without a gain after which a search without any limit ends. */
const FLAT_ROUNDS = 8_000;

/**
 * Time kept of a limit for what follows the search, in milliseconds: so much and so much a tray, and at least this share. A
 * third goes to trying what is left out once more, a third to its reasons, a third to reading back and judging.
 */
const RESERVE_MS = 100;
const RESERVE_PER_TRAY_MS = 2.4;
const RESERVE_SHARE = 0.02;

/** And this share of the time that has passed before planning began, at most so much: what runs for the first time is slow at the end as well. */
const RESERVE_OF_START = 0.2;
const MOST_OF_START_MS = 100;

export type Progress = {
  readonly seconds: number;
  readonly cost: number;
  readonly lowerBound: number;
  readonly gap: number;
  readonly plannedTrays: number;
  readonly trays: number;
  readonly rounds: number;
  /** What is better than at the last report, in words; the first report says that there is a plan. */
  readonly changed: string;
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
  /** `planSoFar` makes a plan of the best there is, judged as every plan is; the search does not notice. */
  readonly onProgress?: (progress: Progress, planSoFar: () => Plan) => void;
  readonly pause?: () => Promise<void>;
  /** Threads that search, 1 or 2. Default 1. The plan is the same where effort is counted. */
  readonly workers?: number;
  /** Whether to stop when nothing has got better for a while, before any limit. */
  readonly stopsWhenFlat?: boolean;
  /**
   * A plan of this scenario, or of another version of it, to start from: what of it still stands is kept, the rest placed anew.
   * When all of it stands, what comes out never costs more.
   */
  readonly startFrom?: Plan;
  /** Stop as soon as a plan costs no more than this, or it is proved that none can. Default: no. */
  readonly enoughCost?: number;
  /** Debug run: every schedule the search accepts is counted again, slowly; a wrong one is an error. Default false. */
  readonly isAudited?: boolean;
  /** Version of this program, written into the plan. */
  readonly version: string;
};

/** Told when a plan to start from does not stand as a whole. */
const START_IN_PART =
  'Not all of the plan to start from stands in this scenario; what does was kept at first, the rest placed anew.';

type Limits = SolveLimits & { readonly askUntilMs: number };

function limitsOf(options: PlanningOptions, startedAtMs: number, trays: number): Limits {
  const { seconds, effort } = options;
  if (Number.isNaN(seconds) || Number.isNaN(effort)) throw new RangeError('a limit is not a number');
  const rounds = effort ?? (seconds === undefined ? DEFAULT_EFFORT : Number.POSITIVE_INFINITY);
  const endMs = seconds === undefined ? Number.POSITIVE_INFINITY : startedAtMs + seconds * 1000;
  const ofStartMs = Math.min(MOST_OF_START_MS, RESERVE_OF_START * (options.now() - startedAtMs));
  const reserveMs = Math.max(RESERVE_MS + ofStartMs + RESERVE_PER_TRAY_MS * trays, RESERVE_SHARE * (seconds ?? 0) * 1000);
  const isFlatEnd = options.stopsWhenFlat ?? (effort === undefined && seconds === undefined);
  const flatRounds = isFlatEnd ? FLAT_ROUNDS : Number.POSITIVE_INFINITY;
  const workers = options.workers ?? 1;
  return {
    rounds,
    workers,
    isAudited: options.isAudited ?? false,
    flatRounds,
    untilMs: endMs - reserveMs,
    fillInUntilMs: endMs - (2 / 3) * reserveMs,
    askUntilMs: endMs - reserveMs / 3,
  };
}

/** Plans a scenario that has been read. Every plan it returns has passed the judge; OwnFault otherwise. */
export async function makePlan(scenario: Scenario, options: PlanningOptions): Promise<Plan> {
  const startedAtMs = options.startedAtMs ?? options.now();
  const seed = options.seed ?? 1;
  const compiled = compileScenario(scenario);
  const trays = compiled.trays.length;
  const start = options.startFrom === undefined ? null : startLayout(compiled, options.startFrom);
  const planFrom = (solution: Solution, mayAsk: MayAsk): Plan => {
    const seconds = Math.round((options.now() - startedAtMs) / 10) / 100;
    const origin = { seed, seconds, version: options.version };
    return judged(
      scenario,
      noted(planOf(scenario, compiled, solution, origin, mayAsk), solution, start?.isWhole ?? true, scenario),
    );
  };
  let before: SolveProgress | null = null;
  const onProgress = (progress: SolveProgress, soFar: () => Solution): void => {
    const { cost, bound, rounds } = progress;
    const changed = sayChanges(before, progress);
    before = progress;
    const lowerBound = Math.min(cost.total, bound.value);
    const gap = cost.total === 0 ? 0 : (cost.total - lowerBound) / cost.total;
    const seconds = (options.now() - startedAtMs) / 1000;
    const news = { cost: cost.total, lowerBound, gap, plannedTrays: trays - cost.omitted, trays, rounds, changed };
    options.onProgress?.({ seconds, ...news }, () => planFrom(soFar(), () => false));
  };
  const limits = {
    ...limitsOf(options, startedAtMs, trays),
    ...(start === null ? {} : { startFrom: start.layout }),
    ...(options.enoughCost === undefined ? {} : { enough: options.enoughCost }),
  };
  const solution = await solve(compiled.problem, seed, limits, {
    now: options.now,
    isCancelled: options.cancelled ?? (() => false),
    pause: options.pause ?? (() => Promise.resolve()),
    onProgress,
  });
  return planFrom(solution, () => options.now() < limits.askUntilMs);
}

/** With its cautions, and a note where not all of the plan to start from stood; of a day under way that goes without saying. */
function noted(plan: Plan, { isStartWhole }: Solution, isLayoutWhole: boolean, scenario: Scenario): Plan {
  const isWhole = scenario.underway !== undefined || (isLayoutWhole && isStartWhole);
  const notes = isWhole ? plan.solver.notes : [...plan.solver.notes, START_IN_PART];
  return { ...plan, solver: { ...plan.solver, notes }, cautions: [...cautionsFor(scenario, plan.tasks)] };
}

function judged(scenario: Scenario, plan: Plan): Plan {
  const { breaches } = judge(scenario, plan);
  const broken = breaches.map((breach) => `${breach.rule}: ${breach.says}`);
  if (broken.length > 0) throw new OwnFault('The plan broke a rule', broken);
  return plan;
}
