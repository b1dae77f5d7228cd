// What the threads of the service do, done in the test's own thread, with small efforts.
import { answerQuestion } from '../../../src/api/jobs/answerQuestion.ts';
import type { Crew, Search } from '../../../src/api/jobs/crew.ts';
import type { ThreadAnswer } from '../../../src/api/jobs/threadTask.ts';
import type { Ask } from '../../../src/api/jobs/work.ts';
import { drawComparison } from '../../../src/draw/comparison/drawComparison.ts';
import { drawPlan } from '../../../src/draw/drawPlan.ts';
import { comparisonSchema } from '../../../src/model/comparison.ts';
import { planSchema } from '../../../src/model/plan.ts';
import { makePlan } from '../../../src/planning.ts';

export type InlineCrew = Crew & { readonly drawn: { count: number } };

export function inlineCrew(): InlineCrew {
  const drawn = { count: 0 };
  const now = (): number => performance.now();
  const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
  const answered = async (ask: Ask, cancelled: () => boolean): Promise<ThreadAnswer> => {
    const { seed = 1, seconds, effort = 20 } = ask.limits;
    const shared = { seed, workers: 1, now, cancelled, pause, version: '1.2.3' };
    if (ask.kind === 'plan')
      return { ok: true, json: JSON.stringify(await makePlan(ask.scenario, { ...shared, seconds, effort })) };
    const found = await answerQuestion(ask, { ...shared, untilMs: now() + seconds * 1000 }, () => {});
    return found.ok ? { ok: true, json: JSON.stringify(found.answer) } : found;
  };
  return {
    drawn,
    search: (ask): Search => {
      let isStopped = false;
      const stop = (): void => {
        isStopped = true;
      };
      return { answer: answered(ask, () => isStopped), stop, kill: stop };
    },
    draw: async (what, json) => {
      drawn.count += 1;
      const value: unknown = JSON.parse(json);
      return what === 'pages' ? drawPlan(planSchema.parse(value)) : drawComparison(comparisonSchema.parse(value));
    },
    warmUp: async () => {},
    planTinyDay: async () => true,
    close: async () => {},
  };
}
