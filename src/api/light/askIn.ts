// What a request asks to be worked on, read whole: right, or refused with everything wrong with it.

import { plainBody } from '../bodyValue.ts';
import type { Ask, WorkLimits } from '../jobs/work.ts';
import { comparisonAsk } from './comparisonAsk.ts';
import { fitAsk } from './fitAsk.ts';
import type { AskGiven } from './lightWork.ts';
import { replanAsk } from './replanAsk.ts';
import { scenarioIn } from './scenarioIn.ts';

const QUESTIONS: Readonly<Record<'fit' | 'comparison' | 'replan', (body: unknown, limits: WorkLimits) => Ask>> = {
  fit: fitAsk,
  comparison: comparisonAsk,
  replan: replanAsk,
};

export function askIn(given: AskGiven): Ask {
  const { limits, text } = given;
  if (given.kind !== 'plan') return QUESTIONS[given.kind](plainBody(text), limits);
  const name = given.from === 'kept scenario' ? 'The scenario' : 'The body';
  const scenario = scenarioIn(text, given.from === 'JSON body', name);
  return { kind: 'plan', scenario, limits };
}
