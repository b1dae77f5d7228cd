// Short work that somebody waits for, done by threads so that no request holds up the others: reading and judging what is sent, writing
// and drawing what is fetched. What each kind of it is given and answers with. All of it can be sent from thread to thread; what is large
// travels as text, which is sent without being taken apart. Done by doLightWork.ts, given out by lightLine.ts.
import type { InputError } from '../../model/inputError.ts';
import type { WorkLimits } from '../jobs/work.ts';
import type { ProblemStatus } from '../problem.ts';

type Kind<Given, Answer> = { readonly given: Given; readonly answer: Answer };

/** What a request asks to be worked on, with the limits of its query. `from`: how the text is read and named in errors. */
export type AskGiven =
  | {
      readonly kind: 'plan';
      readonly text: string;
      readonly from: 'JSON body' | 'YAML body' | 'kept scenario';
      readonly limits: WorkLimits;
    }
  | { readonly kind: 'fit' | 'comparison' | 'replan'; readonly text: string; readonly limits: WorkLimits };

/** A plan that may be posted: plan and scenario as JSON, the pages of its sheet as SVG. */
export type ToPost = {
  readonly timeZone: string;
  readonly scenario: string;
  readonly plan: string;
  readonly pages: readonly string[];
};

export type LightWork = {
  /** Judges the plan in a body. Answers with the verdict as JSON. */
  readonly check: Kind<{ readonly text: string }, string>;
  /** Reads what is asked. Answers with the Ask (jobs/work.ts) as JSON. */
  readonly ask: Kind<AskGiven, string>;
  /** Reads a scenario in both languages; `name` is its name in errors. Answers with it as JSON, defaults filled in. */
  readonly scenario: Kind<{ readonly text: string; readonly isJson: boolean; readonly name: string }, string>;
  /** Reads, judges and draws a plan to be posted for a date; of a body that names one by its id the id. */
  readonly posting: Kind<{ readonly text: string; readonly date: string }, ToPost | { readonly id: string }>;
  /** The same with work the service has: what was kept of its request, and its answer, both JSON. */
  readonly 'posting of work': Kind<{ readonly asked: string; readonly answer: string; readonly date: string }, ToPost>;
  /** Reads what has happened by an instant (RFC 3339), against what is posted: scenario and plan as JSON. Answers with JSON of each event. */
  readonly happened: Kind<
    {
      readonly text: string;
      readonly instant: string;
      readonly posted: { readonly scenario: string; readonly plan: string } | null;
    },
    readonly string[]
  >;
  /** Draws a plan: pages of SVG. */
  readonly pages: Kind<{ readonly plan: string }, readonly string[]>;
  /** Draws a comparison: pages of SVG. */
  readonly curves: Kind<{ readonly comparison: string }, readonly string[]>;
  /** Writes a plan as the list of what to do. */
  readonly list: Kind<{ readonly plan: string }, string>;
  /** Writes a plan as a calendar (RFC 5545) of an instant. */
  readonly calendar: Kind<{ readonly plan: string; readonly instant: string }, string>;
};

export type LightKind = keyof LightWork;
export type Given<K extends LightKind> = LightWork[K]['given'];
export type Answer<K extends LightKind> = LightWork[K]['answer'];

/** A Problem on its way between threads. */
export type Refusal = {
  readonly status: ProblemStatus;
  readonly detail: string;
  readonly errors: readonly InputError[];
  readonly headers: Readonly<Record<string, string>>;
};

/** Not ok: what is wrong with what was sent. Anything else that goes wrong is a fault of ours, and thrown. */
export type Done<K extends LightKind> =
  | { readonly ok: true; readonly answer: Answer<K> }
  | { readonly ok: false; readonly refusal: Refusal };
