// Runs in a thread of the service: plans, questions, drawings, one at a time. Started and asked by threads.ts.
import { setPriority } from 'node:os';
import { performance } from 'node:perf_hooks';
import { drawComparison } from '../../draw/comparison/drawComparison.ts';
import { drawPlan } from '../../draw/drawPlan.ts';
import { comparisonSchema } from '../../model/comparison.ts';
import { planSchema } from '../../model/plan.ts';
import { makePlan } from '../../planning.ts';
import { answerQuestion } from './answerQuestion.ts';
import { Reporter } from './reporter.ts';
import type { AnswerTask, DrawTask, ThreadAnswer, ThreadTask } from './threadTask.ts';
import { tinyDay } from './tinyDay.ts';

const now = (): number => performance.now();

/** Nothing else runs in this thread, and what it tells leaves without a pause. */
const pause = (): Promise<void> => Promise.resolve();

/**
 * The event loop goes first when cores are few. Linux keeps a niceness for each thread (setpriority(2), "C library/kernel differences");
 * elsewhere it would be that of the whole service.
 */
const SEARCH_NICENESS = 15;
let isNice = false;

function beNice(): void {
  if (!isNice && process.platform === 'linux') setPriority(0, SEARCH_NICENESS);
  isNice = true;
}

async function answered({ ask, stop, port, version }: AnswerTask): Promise<ThreadAnswer> {
  beNice();
  const { seconds, effort, seed = 1 } = ask.limits;
  const reporter = new Reporter({ now, seconds, tell: (news) => port.postMessage(news) });
  const cancelled = (): boolean => {
    reporter.tellInTime();
    return Atomics.load(stop, 0) === 1;
  };
  if (ask.kind !== 'plan') {
    const asking = { seed, workers: 1, now, untilMs: now() + seconds * 1000, cancelled, pause, version };
    const found = await answerQuestion(ask, asking, (says) => reporter.step(says));
    return found.ok ? { ok: true, json: JSON.stringify(found.answer) } : found;
  }
  const plan = await makePlan(ask.scenario, {
    seed,
    seconds,
    now,
    cancelled,
    pause,
    version,
    workers: 1,
    onProgress: (progress, planSoFar) => reporter.progress(progress, planSoFar),
    ...(effort === undefined ? {} : { effort }),
    ...(ask.startFrom === undefined ? {} : { startFrom: ask.startFrom }),
  });
  return { ok: true, json: JSON.stringify(plan) };
}

function drawn({ what, json }: DrawTask): readonly string[] {
  const value: unknown = JSON.parse(json);
  return what === 'pages' ? drawPlan(planSchema.parse(value)) : drawComparison(comparisonSchema.parse(value));
}

export default async function workThread(task: ThreadTask): Promise<ThreadAnswer | readonly string[] | boolean> {
  switch (task.do) {
    case 'answer':
      try {
        return await answered(task);
      } finally {
        task.port.close();
      }
    case 'draw':
      return drawn(task);
    case 'plan a tiny day': {
      const plan = await makePlan(tinyDay(), { effort: 1, now, pause, version: task.version });
      return plan.leftOut.length === 0;
    }
  }
}
