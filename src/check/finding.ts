// What the judge hands out: breaches and recounted figures; and what a single rule hands to the judge.
import type { PlanOrder } from '../model/plan.ts';
import type { RuleCode } from '../model/rules.ts';
import type { JudgedDay } from './judgedDay.ts';

/** One place where a plan does not meet a rule, as the rule finds it. Minutes count from the start of the day. */
export type Finding = {
  readonly says: string;
  readonly taskIds: readonly string[];
  readonly minute?: number;
  /** The moment from which on it is over: what ends at 51 is over at 51. Absent on what is never over. */
  readonly until?: number;
};

/** A rule at work: everything in the day that breaks it, the recounted figures at hand. */
export type RuleCheck = (day: JudgedDay, figures: Figures) => readonly Finding[];

/** One place where a plan does not meet a rule: which rule, who, what, where, when, and what to do. */
export type Breach = Omit<Finding, 'until'> & { readonly rule: RuleCode; readonly doThis: string };

/** The figures of a plan, recounted from its tasks and set points alone. Minutes count from the start of the day. */
export type Figures = {
  /** Rounded to 6 decimals. */
  readonly cost: number;
  readonly lateTrayMinutes: number;
  readonly leftOutTrays: number;
  /** Makespan: the last ready minute; 0 when no tray is planned. */
  readonly finishMinute: number;
  readonly temperatureChanges: number;
  /** First minute of hands-on work; 0 when there is none. */
  readonly firstHandsOnMinute: number;
  /** Steps planned before that are now at another time, in another place or by other people; only of a day under way. */
  readonly movedTasks?: number;
  /** One for each order of the scenario, in its order. */
  readonly orders: readonly PlanOrder[];
};

export type Verdict = { readonly breaches: readonly Breach[]; readonly figures: Figures };
