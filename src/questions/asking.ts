// How a question has its days planned: with whose clock, for how long, from which seed. Used by every question.
import type { Plan } from '../model/plan.ts';
import type { Goals, Scenario } from '../model/scenario.ts';
import { makePlan, type Progress } from '../planning.ts';

export type Asking = {
  readonly seed: number;
  /** Threads that search, 1 or 2. */
  readonly workers: number;
  /** A clock in milliseconds. */
  readonly now: () => number;
  /** Time of `now` by which the answer is to be in hand; Infinity: no limit. */
  readonly untilMs: number;
  readonly cancelled: () => boolean;
  readonly pause: () => Promise<void>;
  /** Version of this program, written into plans. */
  readonly version: string;
};

export type AskLimits = {
  /** Rounds of search at most. Default: no limit but the time that is left; without a time limit, as many as `plan` takes. */
  readonly effort?: number;
  /** Seconds at most, within the time that is left. */
  readonly seconds?: number;
  /** A plan of this or another version of the scenario, from which to start. */
  readonly startFrom?: Plan;
  /** Stop as soon as a plan costs no more than this, or it is proved that none can. */
  readonly enoughCost?: number;
  /** Whether to stop when nothing has got better for a while. Default: as makePlan has it. */
  readonly stopsWhenFlat?: boolean;
  readonly onProgress?: (progress: Progress, planSoFar: () => Plan) => void;
};

/** Seconds left for an answer; Infinity without a time limit, 0 when it is over or was stopped. */
export function secondsLeft(asking: Asking): number {
  return asking.cancelled() ? 0 : Math.max(0, (asking.untilMs - asking.now()) / 1000);
}

/** One plan within what is left of the time, judged as every plan is. At least a first plan is made, however late it is. */
export function ask(scenario: Scenario, asking: Asking, limits: AskLimits = {}): Promise<Plan> {
  const { seed, workers, now, cancelled, pause, version } = asking;
  const { effort, startFrom, enoughCost, stopsWhenFlat, onProgress } = limits;
  const seconds = Math.min(limits.seconds ?? Number.POSITIVE_INFINITY, secondsLeft(asking));
  return makePlan(scenario, {
    seed,
    workers,
    now,
    cancelled,
    pause,
    version,
    ...(effort === undefined ? {} : { effort }),
    ...(seconds === Number.POSITIVE_INFINITY ? {} : { seconds }),
    ...(startFrom === undefined ? {} : { startFrom }),
    ...(enoughCost === undefined ? {} : { enoughCost }),
    ...(stopsWhenFlat === undefined ? {} : { stopsWhenFlat }),
    ...(onProgress === undefined ? {} : { onProgress }),
  });
}

/** Goals under which a plan costs nothing exactly when every tray is planned and ready on time. */
const ON_TIME_GOALS: Goals = { lateTrayMinute: 1, leftOutTray: 5000, finishMinute: 0, temperatureChange: 0, aim: 'finish-early' };

/** Whether a day can be done on time: with the plan that shows it; or proved that it cannot; or not found within the limits. */
export type OnTime =
  | { readonly is: 'possible'; readonly plan: Plan }
  | { readonly is: 'impossible'; readonly bound: Plan['bound']; readonly plan: Plan }
  | { readonly is: 'unknown'; readonly plan: Plan };

/** Asks whether every tray of a scenario can be ready by the time of its order. Its plans are of the scenario under other goals. */
export async function askOnTime(scenario: Scenario, asking: Asking, limits: AskLimits = {}): Promise<OnTime> {
  const plan = await ask({ ...scenario, goals: ON_TIME_GOALS }, asking, { ...limits, enoughCost: 0 });
  if (plan.score.cost === 0) return { is: 'possible', plan };
  return plan.score.lowerBound > 0 ? { is: 'impossible', bound: plan.bound, plan } : { is: 'unknown', plan };
}
