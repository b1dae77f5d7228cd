// What the service works on away from its event loop: what can be asked, what is told meanwhile, what comes out. Used by routes and by
// the threads that do the work; all of it can be sent from thread to thread.
import type { Comparison } from '../../model/comparison.ts';
import type { FitAnswer } from '../../model/fitAnswer.ts';
import type { Happened } from '../../model/happened.ts';
import type { InputError } from '../../model/inputError.ts';
import type { Plan } from '../../model/plan.ts';
import type { ReplanAnswer } from '../../model/replanAnswer.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { Progress } from '../../planning.ts';
import type { CompareQuestion } from '../../questions/compare.ts';
import type { WorkKind, WorkState } from '../../store/store.ts';

/** Limits of one search. `seconds` from when its turn comes, both ends included: 0.1 to the most the service allows. */
export type WorkLimits = { readonly seconds: number; readonly effort?: number; readonly seed?: number };

export type Ask =
  | { readonly kind: 'plan'; readonly scenario: Scenario; readonly limits: WorkLimits; readonly startFrom?: Plan }
  | {
      readonly kind: 'fit';
      readonly before: Scenario;
      readonly after: Scenario;
      readonly base?: Plan;
      readonly limits: WorkLimits;
    }
  | { readonly kind: 'comparison'; readonly question: CompareQuestion; readonly limits: WorkLimits }
  | {
      readonly kind: 'replan';
      readonly scenario: Scenario;
      readonly plan: Plan;
      /** Minute of the day. */
      readonly now: number;
      readonly happened: Happened;
      readonly limits: WorkLimits;
    };

export type AnswerOf = {
  readonly plan: Plan;
  readonly fit: FitAnswer;
  readonly comparison: Comparison;
  readonly replan: ReplanAnswer;
};

/** What is told of work that goes on, at most a few times a second. `says` is for the kinds that have no figures. */
export type WorkNews = { readonly progress: Progress | null; readonly says: string; readonly seconds: number };

/** Why there is no answer: in a sentence, with the errors of the input where it was to blame. */
export type WorkFailure = { readonly says: string; readonly errors: readonly InputError[] };

/** One piece of work as everybody may see it. */
export type Work = {
  readonly id: string;
  readonly kind: WorkKind;
  readonly state: WorkState;
  readonly askedAt: string;
  readonly endedAt: string | null;
  /** How many wait before it; 0 when it does not wait. */
  readonly ahead: number;
  /** The last news; null while there is none. */
  readonly news: WorkNews | null;
  /** The answer; of a plan that is being made, its best so far. Null while there is none. */
  readonly answer: AnswerOf[WorkKind] | null;
  /** Of failed work. */
  readonly failure: WorkFailure | null;
};
