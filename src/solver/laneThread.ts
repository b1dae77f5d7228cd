// The thread of one lane: told its problem, it lays it out once and, where that is wanted, argues its floor; then it works a
// stretch at a time, as asked, until the stretch is over or the shared counter says to stop. One problem may follow another.
// Started by startLaneThread.ts.
import { parentPort } from 'node:worker_threads';
import { type Argued, argue, withPacking } from './bounds/bestBound.ts';
import { Paths } from './bounds/headsAndTails.ts';
import { type Found, Lane, type LaneTask, type News, type Stretch } from './lane.ts';
import type { ShopProblem } from './problem.ts';
import { shopOf } from './shop.ts';

/** The first message to it, and of every further problem. */
export type ThreadStart = {
  readonly problem: ShopProblem;
  readonly seed: number;
  readonly task: LaneTask;
  readonly isAudited: boolean;
  /** Whether it is to argue the floor before all else. */
  readonly argues: boolean;
  /** One number: stretches up to this one are to end. */
  readonly ended: Int32Array;
};

/** Every other message. */
export type ThreadAsk = { readonly number: number; readonly news: News; readonly stretch: Stretch };
/** `found` is null, and the number 0, when the thread says that it is ready, and what it has argued. */
export type ThreadAnswer = { readonly number: number; readonly found: Found | null; readonly argued?: Argued };

type Work = { readonly lane: Lane; readonly floor: number; readonly ended: Int32Array };

let work: Work | null = null;

function tell(answer: ThreadAnswer): void {
  parentPort?.postMessage(answer);
}

function begin({ problem, seed, task, isAudited, argues, ended }: ThreadStart): void {
  const shop = shopOf(problem);
  const lane = new Lane(shop, seed, task, isAudited);
  const argued = argues ? argue(shop, new Paths(shop, problem)) : undefined;
  work = { lane, floor: argued === undefined ? 0 : withPacking(problem, argued, 0).value, ended };
  tell({ number: 0, found: null, ...(argued === undefined ? {} : { argued }) });
}

function go({ lane, floor, ended }: Work, { number, news, stretch }: ThreadAsk): void {
  const isOver = (): boolean => Atomics.load(ended, 0) >= number;
  const known = { ...news, floor: Math.max(floor, news.floor) };
  tell({ number, found: lane.run(known, { ...stretch, untilMs: 1 }, () => (isOver() ? 1 : 0)) });
}

parentPort?.on('message', (message: ThreadStart | ThreadAsk) => {
  if ('problem' in message) begin(message);
  else if (work !== null) go(work, message);
});
