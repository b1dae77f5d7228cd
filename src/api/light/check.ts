// A body with a scenario and a plan by anybody: the judge's verdict.
import type { Verdict } from '../../check/finding.ts';
import { judge } from '../../check/judge.ts';
import { readWrittenPlan } from '../../read/readPlan.ts';
import { plainBody, shapeOf, within } from '../bodyValue.ts';
import { mustRead } from '../mustRead.ts';
import { checkBodySchema } from '../routes/bodies.ts';
import { scenarioWithin } from './soundPlan.ts';

export function verdictOn(text: string): Verdict {
  const body = shapeOf(checkBodySchema, plainBody(text));
  const scenario = mustRead(scenarioWithin(body.scenario));
  const plan = mustRead(within('plan', readWrittenPlan(JSON.stringify(body.plan), scenario)));
  return judge(scenario, plan);
}
