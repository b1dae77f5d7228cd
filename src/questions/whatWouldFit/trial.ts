// Tries changes of one day: is there a plan in which the wanted trays fit, and does the day planned from scratch have them fit.
// Used by every kind of change.
import type { PatchOperation } from '../../model/changes.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { makePlan } from '../../planning.ts';
import { type Asking, ask, askOnTime, secondsLeft } from '../asking.ts';
import { type Acceptance, withAccepted } from './accepted.ts';
import type { Variant } from './ladder.ts';
import { shiftedPlan } from './shiftedPlan.ts';
import { doFit, type Wanted } from './trouble.ts';

/** A scenario changed by JSON Patch and read again; null when it is unsound then. */
export type Patching = (scenario: Scenario, operations: readonly PatchOperation[]) => Scenario | null;

export type Verdict = 'possible' | 'impossible' | 'unknown';

/** One question gets at most this share of the time that is left, and at least so many seconds to be of use. */
const QUESTION_SHARE = 1 / 8;
const LEAST_SECONDS = 0.25;

/** Below so many seconds, threads take longer to begin than they are worth. */
const THREADS_FROM_SECONDS = 1.5;

/** Threads for a search of so many seconds. */
export function workersFor({ workers }: Asking, seconds: number): number {
  return seconds < THREADS_FROM_SECONDS ? 1 : workers;
}

/** How long a question takes at least on this machine and day: as long as the quickest so far. */
export class Pace {
  private quickest = Number.POSITIVE_INFINITY;

  took(seconds: number): void {
    this.quickest = Math.min(this.quickest, seconds);
  }

  get leastSeconds(): number {
    return Math.max(LEAST_SECONDS, this.quickest === Number.POSITIVE_INFINITY ? 0 : this.quickest);
  }
}

type Start = { readonly plan: Plan; readonly earlierBy: number };

export type Tried = {
  readonly scenario: Scenario;
  readonly wanted: Wanted;
  /** What the day fails at already. */
  readonly acceptance: Acceptance;
  /** A plan of the day, or of another version of it, to start from. */
  readonly startFrom: Plan;
  readonly patch: Patching;
  /** Rounds for each question. */
  readonly rounds: number;
  readonly pace: Pace;
};

export class Trial {
  private readonly tried: Tried;
  private readonly asking: Asking;
  private start: Start;

  constructor(tried: Tried, asking: Asking) {
    this.tried = tried;
    this.asking = asking;
    this.start = { plan: tried.startFrom, earlierBy: 0 };
  }

  /** Whether a verdict "impossible" holds for the day itself: nothing is accepted that a plan might do otherwise. */
  get isWhole(): boolean {
    return this.tried.acceptance.size === 0;
  }

  hasTime(): boolean {
    return secondsLeft(this.asking) >= this.tried.pace.leastSeconds;
  }

  private changed(variant: Variant): Scenario | null {
    return this.tried.patch(this.tried.scenario, variant.operations);
  }

  /**
   * Whether the wanted trays can fit; with a plan that shows it, of the changed day without what is accepted. It takes at most
   * that share of the time that is left.
   */
  async decide(variant: Variant, share = QUESTION_SHARE): Promise<{ readonly is: Verdict; readonly plan: Plan | null }> {
    const changed = this.changed(variant);
    if (changed === null) return { is: 'unknown', plan: null };
    const { plan, earlierBy } = this.start;
    const { now } = this.asking;
    const seconds = Math.max(LEAST_SECONDS, share * secondsLeft(this.asking));
    const startedAtMs = now();
    const asking = { ...this.asking, workers: workersFor(this.asking, seconds) };
    const answer = await askOnTime(withAccepted(changed, this.tried.acceptance), asking, {
      effort: this.tried.rounds,
      startFrom: shiftedPlan(plan, variant.earlierBy - earlierBy),
      ...(seconds === Number.POSITIVE_INFINITY ? {} : { seconds }),
    });
    this.tried.pace.took((now() - startedAtMs) / 1000);
    if (answer.is === 'possible') this.start = { plan: answer.plan, earlierBy: variant.earlierBy };
    return { is: answer.is, plan: answer.plan };
  }

  /** The day as it is, from a plan of what is not accepted: a plan of all of it in which the wanted trays fit, or null. */
  async wholePlan(startFrom: Plan): Promise<Plan | null> {
    const plan = await ask(this.tried.scenario, this.asking, { effort: this.tried.rounds, startFrom });
    return doFit(plan, this.tried.wanted) ? plan : null;
  }

  /**
   * The changed day planned from scratch as `plan` plans a day: the plan when the wanted trays fit in it. A search that the time
   * cut short tells nothing.
   */
  async planAgain(variant: Variant): Promise<Plan | 'no-time' | 'not-found'> {
    const changed = this.changed(variant);
    if (changed === null) return 'not-found';
    const { seed, workers, now, pause, version, untilMs } = this.asking;
    const cancelled = (): boolean => this.asking.cancelled() || now() >= untilMs;
    const plan = await makePlan(changed, { seed, workers, now, pause, version, cancelled });
    if (cancelled()) return 'no-time';
    return doFit(plan, this.tried.wanted) ? plan : 'not-found';
  }
}
