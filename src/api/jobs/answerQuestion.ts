// Answers a question that takes more than one plan: does it fit, what would changes bring, how does the day go on. Run by the threads
// of the service; which day is being worked on is told step by step.
import type { Comparison } from '../../model/comparison.ts';
import type { FitAnswer } from '../../model/fitAnswer.ts';
import type { InputError } from '../../model/inputError.ts';
import type { ReplanAnswer } from '../../model/replanAnswer.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { Asking } from '../../questions/asking.ts';
import { compare } from '../../questions/compare.ts';
import { fit as doesItFit, type FitQuestion } from '../../questions/fit.ts';
import { replan } from '../../questions/replan.ts';
import { patchScenario } from '../../read/patchScenario.ts';
import { readScenarioValue } from '../../read/readScenario.ts';
import type { Ask } from './work.ts';

type Question = Exclude<Ask, { readonly kind: 'plan' }>;
type AskOf<K extends Question['kind']> = Extract<Question, { readonly kind: K }>;

export type Answered =
  | { readonly ok: true; readonly answer: FitAnswer | Comparison | ReplanAnswer }
  /** What is told to have happened cannot be; the paths are those of what is told. */
  | { readonly ok: false; readonly errors: readonly InputError[] };

/** What is wrong with a scenario we made ourselves, read as any scenario is: as text it would hold no key without a value. */
export function faultsOf(scenario: Scenario): readonly InputError[] {
  const reading = readScenarioValue(JSON.parse(JSON.stringify(scenario)));
  return reading.ok ? [] : reading.errors;
}

function effortOf({ limits: { effort } }: Question): { readonly effort?: number } {
  return effort === undefined ? {} : { effort };
}

function fitQuestion(ask: AskOf<'fit'>, onStep: (says: string) => void): FitQuestion {
  const { before, after, base, limits } = ask;
  return {
    day: { before, after },
    patch: (scenario, operations) => {
      const patched = patchScenario(scenario, operations);
      return patched.ok ? patched.scenario : null;
    },
    onStep,
    ...(base === undefined ? {} : { base }),
    ...(limits.effort === undefined ? {} : { effort: limits.effort, rounds: limits.effort }),
  };
}

/** `onStep` is told what is being looked for. The time of the asking covers the whole answer. */
export async function answerQuestion(ask: Question, asking: Asking, onStep: (says: string) => void): Promise<Answered> {
  switch (ask.kind) {
    case 'fit':
      return { ok: true, answer: await doesItFit(fitQuestion(ask, onStep), asking) };
    case 'comparison': {
      const question = { ...ask.question, ...effortOf(ask) };
      const answer = await compare(question, asking, (says, done, all) => onStep(`${says} (${done} of ${all} done)`));
      return { ok: true, answer };
    }
    case 'replan': {
      onStep('the rest of the day');
      return replan(ask.scenario, ask.plan, { now: ask.now, happened: ask.happened, faultsOf }, asking, effortOf(ask));
    }
  }
}
