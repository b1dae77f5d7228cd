// The real parts of the command. Loaded when a request is known to be good, so that help and usage errors come at once.
import { wakeThreads } from '../solver/wakeThreads.ts';
import type { Parts } from './parts.ts';
import type { Request } from './request.ts';
import { workersFor } from './searchLimits.ts';
import type { Surroundings } from './surroundings.ts';

export async function realParts(request: Request, surroundings: Surroundings): Promise<Parts> {
  // They begin while this is loaded and the day is read.
  if (request.do === 'plan' || request.do === 'replan' || request.do === 'fit' || request.do === 'compare')
    wakeThreads(workersFor(request, surroundings));
  const [scenario, plan, planning, check, draw, howSure, careful, happened, questions] = await Promise.all([
    import('../read/readScenario.ts'),
    import('../read/readPlan.ts'),
    import('../planning.ts'),
    import('../check/judge.ts'),
    import('../draw/drawPlan.ts'),
    import('../questions/howSure/howSure.ts'),
    import('../questions/howSure/careful.ts'),
    import('../read/readHappened.ts'),
    import('../questions/replan.ts'),
  ]);
  return {
    readScenario: scenario.readScenario,
    readPlan: plan.readPlan,
    readWrittenPlan: plan.readWrittenPlan,
    readHappened: happened.readHappened,
    placedInHappened: happened.placedInHappened,
    replan: questions.replan,
    makePlan: planning.makePlan,
    defaultEffort: planning.DEFAULT_EFFORT,
    judge: check.judge,
    drawPlan: draw.drawPlan,
    howSure: howSure.howSure,
    carefulScenario: careful.carefulScenario,
  };
}
