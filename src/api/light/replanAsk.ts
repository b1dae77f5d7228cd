// What POST /v1/replans asks: a day, its plan, the time it is and what has happened in; the rest of the day planned anew out.
import { happenedSchema } from '../../model/happened.ts';
import type { InputError } from '../../model/inputError.ts';
import { restOfDay } from '../../questions/replan.ts';
import { readHappened } from '../../read/readHappened.ts';
import { readNow } from '../../read/readNow.ts';
import { shapeOf, within } from '../bodyValue.ts';
import { faultsOf } from '../jobs/answerQuestion.ts';
import type { Ask, WorkLimits } from '../jobs/work.ts';
import { mustRead } from '../mustRead.ts';
import { replanBodySchema } from '../routes/bodies.ts';
import { soundPlan } from './soundPlan.ts';

/** What a body asks. That what is told can have happened is found out here, so that it is refused and not accepted to fail. */
export function replanAsk(body: unknown, limits: WorkLimits): Ask {
  const read = shapeOf(replanBodySchema, body);
  const [scenario, plan] = soundPlan(read.scenario, read.plan);
  const now = mustRead(within('now', readNow(read.now, scenario)));
  const told = JSON.stringify(read.happened ?? happenedSchema.parse({}));
  const happened = mustRead(within('happened', readHappened(told, scenario, plan, now)));
  if (happened.happened.length > 0 || happened.keep.length > 0) {
    const rest = restOfDay(scenario, plan, { now, happened, faultsOf });
    const errors: readonly InputError[] = rest.ok ? [] : rest.errors;
    mustRead(within('happened', errors.length === 0 ? { ok: true, value: rest } : { ok: false, errors }));
  }
  return { kind: 'replan', scenario, plan, now, happened, limits: { seed: plan.solver.seed, ...limits } };
}
