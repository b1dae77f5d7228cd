// The real parts of the command. Loaded when a request is known to be good, so that help and usage errors come at once.
import { carefulScenario } from '../questions/howSure/careful.ts';
import { wakeThreads } from '../solver/wakeThreads.ts';
import type { Parts } from './parts.ts';
import type { Request } from './request.ts';
import { workersFor } from './searchLimits.ts';
import type { Surroundings } from './surroundings.ts';

export async function realParts(request: Request, surroundings: Surroundings): Promise<Parts> {
  // They begin while this is loaded and the day is read.
  if (request.do === 'plan' || request.do === 'replan' || request.do === 'fit' || request.do === 'compare')
    wakeThreads(workersFor(request, surroundings));
  const [{ readScenario }, { makePlan, DEFAULT_EFFORT }, { judge }] = await Promise.all([
    import('../read/readScenario.ts'),
    import('../planning.ts'),
    import('../check/judge.ts'),
  ]);
  return {
    readScenario,
    makePlan,
    defaultEffort: DEFAULT_EFFORT,
    judge,
    // Not every request wants these.
    readPlan: async (...given) => (await import('../read/readPlan.ts')).readPlan(...given),
    readWrittenPlan: async (...given) => (await import('../read/readPlan.ts')).readWrittenPlan(...given),
    readHappened: async (...given) => (await import('../read/readHappened.ts')).readHappened(...given),
    placedInHappened: async (...given) => (await import('../read/readHappened.ts')).placedInHappened(...given),
    replan: async (...given) => (await import('../questions/replan.ts')).replan(...given),
    drawPlan: async (...given) => (await import('../draw/drawPlan.ts')).drawPlan(...given),
    howSure: async (...given) => (await import('../questions/howSure/howSure.ts')).howSure(...given),
    carefulScenario,
  };
}
