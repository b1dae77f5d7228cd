// Whether a part of a day can be ready on time, asked of the planner once for each part, all within one budget. Used by clash.
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { type Asking, askOnTime, secondsLeft } from '../asking.ts';
import { type Candidate, dayOf } from './dayOf.ts';

export type ClashLimits = {
  /** Rounds of search over all days planned together. Default: no limit. */
  readonly effort?: number;
  /** A plan of the day to begin from. */
  readonly startFrom?: Plan;
};

/** `plan` is null when nothing is left to bake. */
export type Verdict =
  | { readonly is: 'possible'; readonly plan: Plan | null }
  | { readonly is: 'impossible'; readonly bound: Plan['bound'] }
  | { readonly is: 'unknown' };

/**
 * One day gets at most this share of what is left of time and effort, so that a hard one does not use up the budget: a large
 * one where the answer stands in the end, a small one where it only guides the search.
 */
const SHARE = 1 / 4;
const GUIDE_SHARE = 1 / 12;
const LEAST_ROUNDS = 20;
const LEAST_SECONDS = 0.4;

type Known = { readonly kept: ReadonlySet<Candidate>; readonly verdict: Verdict };

const isWithin = (part: ReadonlySet<Candidate>, whole: ReadonlySet<Candidate>): boolean =>
  [...part].every((one) => whole.has(one));

export class Verdicts {
  private readonly scenario: Scenario;
  private readonly all: readonly Candidate[];
  private readonly asking: Asking;
  private readonly startFrom: Plan | undefined;
  private roundsLeft: number;
  /** By the day planned: limits that do not matter to what is left give the same day. */
  private readonly byDay = new Map<string, Verdict>();
  private readonly known: Known[] = [];
  /** Days planned. */
  solves = 0;

  constructor(scenario: Scenario, all: readonly Candidate[], asking: Asking, limits: ClashLimits) {
    this.scenario = scenario;
    this.all = all;
    this.asking = asking;
    this.startFrom = limits.startFrom;
    this.roundsLeft = limits.effort ?? Number.POSITIVE_INFINITY;
  }

  get isOver(): boolean {
    return this.roundsLeft < LEAST_ROUNDS || secondsLeft(this.asking) <= 0;
  }

  /** What the planner says of exactly these. Asked again while it is unknown. */
  async of(kept: ReadonlySet<Candidate>, share = SHARE): Promise<Verdict> {
    const day = dayOf(this.scenario, this.all, kept);
    if (day === null) return { is: 'possible', plan: null };
    const key = JSON.stringify(day);
    const before = this.byDay.get(key);
    if (before !== undefined) return before;
    if (this.isOver) return { is: 'unknown' };
    const verdict = await this.solved(day, kept, share);
    if (verdict.is === 'unknown') return verdict;
    this.byDay.set(key, verdict);
    this.known.push({ kept, verdict });
    return verdict;
  }

  /**
   * Whether these cannot be met, as far as is known: by what the planner has said of more of them (possible) or of fewer
   * (impossible), else by asking it. Only a guide for the search: what is said in the end is asked of exactly the set.
   */
  async isImpossible(kept: ReadonlySet<Candidate>, share = GUIDE_SHARE): Promise<boolean> {
    const isPossible = this.known.some((one) => one.verdict.is === 'possible' && isWithin(kept, one.kept));
    if (isPossible) return false;
    return (await this.of(kept, share)).is === 'impossible';
  }

  private async solved(day: Scenario, kept: ReadonlySet<Candidate>, share: number): Promise<Verdict> {
    const larger = this.known.find((one) => one.verdict.is === 'possible' && isWithin(kept, one.kept))?.verdict;
    const startFrom = larger?.is === 'possible' && larger.plan !== null ? larger.plan : this.startFrom;
    const effort = Math.max(LEAST_ROUNDS, Math.floor(this.roundsLeft * share));
    const left = secondsLeft(this.asking);
    const seconds = Math.min(left, Math.max(LEAST_SECONDS, left * share));
    const onTime = await askOnTime(day, this.asking, {
      ...(Number.isFinite(effort) ? { effort } : {}),
      ...(Number.isFinite(seconds) ? { seconds } : {}),
      ...(startFrom === undefined ? {} : { startFrom }),
    });
    this.solves++;
    this.roundsLeft -= onTime.plan.solver.effort;
    if (onTime.is === 'possible') return { is: 'possible', plan: onTime.plan };
    return onTime.is === 'impossible' ? { is: 'impossible', bound: onTime.bound } : { is: 'unknown' };
  }
}
