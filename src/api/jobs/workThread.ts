// Runs in a thread of the service: plans, questions, light work, one at a time. Started and asked by openCrew.ts.
import { setPriority } from 'node:os';
import { performance } from 'node:perf_hooks';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { makePlan } from '../../planning.ts';
import { doLightWork } from '../light/doLightWork.ts';
import type { Done, LightKind } from '../light/lightWork.ts';
import { answerQuestion } from './answerQuestion.ts';
import { Reporter } from './reporter.ts';
import type { AnswerTask, ThreadAnswer, ThreadTask } from './threadTask.ts';
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

function planOf(scenario: Scenario, version: string): Promise<Plan> {
  return makePlan(scenario, { effort: 1, now, pause, version });
}

/** As a plan is posted and fetched: what is read here is ours, so nothing is refused. */
async function warmUp(version: string): Promise<boolean> {
  const scenario = tinyDay();
  const plan = await planOf(scenario, version);
  const text = JSON.stringify({ scenario, plan });
  const done = [
    doLightWork('scenario', { text: JSON.stringify(scenario), isJson: true, name: 'The day of one tray' }),
    doLightWork('check', { text }),
    doLightWork('posting', { text, date: scenario.date }),
    doLightWork('list', { plan: JSON.stringify(plan) }),
    doLightWork('calendar', { plan: JSON.stringify(plan), instant: `${scenario.date}T00:00:00Z` }),
  ];
  return done.every(({ ok }) => ok);
}

type Returned = ThreadAnswer | Done<LightKind> | boolean;

export default async function workThread(task: ThreadTask): Promise<Returned> {
  switch (task.do) {
    case 'answer':
      try {
        return await answered(task);
      } finally {
        task.port.close();
      }
    case 'light':
      return doLightWork(task.kind, task.given);
    case 'warm up':
      return warmUp(task.version);
    case 'plan a tiny day':
      return (await planOf(tinyDay(), task.version)).leftOut.length === 0;
  }
}
