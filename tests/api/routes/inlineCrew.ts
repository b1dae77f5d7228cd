// What the threads of the service do, done in the test's own thread, with small efforts.
import { answerQuestion } from '../../../src/api/jobs/answerQuestion.ts';
import type { Crew, Search } from '../../../src/api/jobs/crew.ts';
import type { ThreadAnswer } from '../../../src/api/jobs/threadTask.ts';
import type { Ask } from '../../../src/api/jobs/work.ts';
import type { LightKind } from '../../../src/api/light/lightWork.ts';
import { makePlan } from '../../../src/planning.ts';
import { doneHere } from '../light/doneHere.ts';

export type InlineCrew = Crew & { readonly drawn: { count: number } };

const DRAWS: ReadonlySet<LightKind> = new Set<LightKind>(['posting', 'posting of work', 'pages', 'curves']);

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
    light: (kind, given) => {
      if (DRAWS.has(kind)) drawn.count += 1;
      return doneHere(kind, given);
    },
    warmUp: async () => {},
    planTinyDay: async () => true,
    close: async () => {},
  };
}
