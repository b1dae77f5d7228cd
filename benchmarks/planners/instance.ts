// One scenario of a benchmark: its name, its text as the children read it, and what is known of it from elsewhere.
import type { Scenario } from '../../src/model/scenario.ts';

export const SETS = ['generated', 'mornings'] as const;

export type Instance = {
  readonly set: (typeof SETS)[number];
  readonly name: string;
  readonly trays: number;
  readonly scenario: Scenario;
  /** The file children read. */
  readonly file: string;
  /** Price and floor a native general-purpose engine found in a minute, when somebody measured them. */
  readonly reference: { readonly cost: number; readonly bound: number } | null;
};

/** What one planner made of one scenario within one limit. */
export type Row = {
  readonly set: Instance['set'];
  readonly scenario: string;
  readonly trays: number;
  readonly planner: Planner;
  readonly limitSeconds: number;
  /** Null: it had no plan by then. */
  readonly cost: number | null;
  readonly lowerBound: number;
  readonly lateTrayMinutes: number;
  readonly leftOutTrays: number;
  readonly finishMinute: number;
  readonly isProved: boolean;
  /** Seconds of the whole process; of CP-SAT by its own clock, which leaves loading and building the model out. */
  readonly seconds: number;
  /** Processors it had at work on average; less than its threads when the machine was busy. Null: not measured. */
  readonly cores: number | null;
  readonly peakMb: number | null;
  /** Fingerprint of the code that made it. */
  readonly source: string;
};

export const PLANNERS = ['ovenward', 'cp-sat', 'rule'] as const;
export type Planner = (typeof PLANNERS)[number];
