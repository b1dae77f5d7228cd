// The thread of one lane: lays the problem out once, then works a stretch at a time, as asked, until the stretch is over or
// the shared counter says to stop. Started by crew.ts.
import { parentPort, workerData } from 'node:worker_threads';
import { type Found, Lane, type LaneTask, type News, type Stretch } from './lane.ts';
import type { ShopProblem } from './problem.ts';
import { shopOf } from './shop.ts';

export type ThreadStart = {
  readonly problem: ShopProblem;
  readonly seed: number;
  readonly task: LaneTask;
  readonly isAudited: boolean;
  /** One number: stretches up to this one are to end. */
  readonly ended: Int32Array;
};

export type ThreadAsk = { readonly number: number; readonly news: News; readonly stretch: Stretch };
/** `found` is null, and the number 0, when the thread says that it is ready. */
export type ThreadAnswer = { readonly number: number; readonly found: Found | null };

const { problem, seed, task, isAudited, ended } = workerData as ThreadStart;
const lane = new Lane(shopOf(problem), seed, task, isAudited);

parentPort?.on('message', ({ number, news, stretch }: ThreadAsk) => {
  const isOver = (): boolean => Atomics.load(ended, 0) >= number;
  const found = lane.run(news, { ...stretch, untilMs: 1 }, () => (isOver() ? 1 : 0));
  parentPort?.postMessage({ number, found } satisfies ThreadAnswer);
});
parentPort?.postMessage({ number: 0, found: null } satisfies ThreadAnswer);
