// The lane on a thread of its own: whenever it wakes, answers, is ended or dies, the search comes to an end and says what went wrong.
import { spawnSync } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import { describe, expect, test } from 'vitest';
import { planSchema } from '../../src/model/plan.ts';
import { argue } from '../../src/solver/bounds/bestBound.ts';
import { Paths } from '../../src/solver/bounds/headsAndTails.ts';
import { Crew, type CrewOptions, type Orders } from '../../src/solver/crew.ts';
import type { Found, News } from '../../src/solver/lane.ts';
import type { Thread } from '../../src/solver/laneElsewhere.ts';
import type { ThreadAnswer, ThreadAsk, ThreadStart } from '../../src/solver/laneThread.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { keepLaneThread, startLaneThread } from '../../src/solver/startLaneThread.ts';
import { jobShop } from './shops.ts';

const shop = shopOf(jobShop([[[0, 3]], [[0, 2]]]));
const otherShop = shopOf(
  jobShop([
    [
      [0, 4],
      [1, 2],
    ],
    [[0, 3]],
    [
      [1, 5],
      [0, 1],
    ],
  ]),
);
const AWAKE: ThreadAnswer = { number: 0, found: null };
const FLOOR = 4;
const found: Found = {
  layout: null,
  total: Number.POSITIVE_INFINITY,
  isComplete: false,
  floor: FLOOR,
  rounds: 1,
  isDone: false,
};

/** A thread that does only what a test says, and ends a moment after it was told to. */
class HeldThread extends EventEmitter implements Thread {
  readonly asked: ThreadAsk[] = [];
  endings = 0;
  /** What it still says while it is being ended. */
  lastWords: ThreadAnswer | null = null;

  postMessage(ask: ThreadAsk): void {
    this.asked.push(ask);
  }

  ref(): void {}

  unref(): void {}

  tell(answer: ThreadAnswer): void {
    this.emit('message', answer);
  }

  /** As of a Worker: the exit follows what was said before. */
  async terminate(): Promise<void> {
    this.endings++;
    await new Promise((ended) => setTimeout(ended, 5));
    if (this.lastWords !== null) this.tell(this.lastWords);
    await new Promise((ended) => setTimeout(ended, 5));
    this.emit('exit', 1);
  }
}

function crewOf(startThread: NonNullable<CrewOptions['startThread']>): Crew {
  return new Crew(shop, 1, { workers: 2, isAudited: false, now: () => performance.now(), startThread });
}

/** A crew whose lane elsewhere has been asked to prove, as at the beginning of every solve by the clock. */
function heldCrew(): { readonly crew: Crew; readonly thread: HeldThread; readonly start: ThreadStart } {
  const thread = new HeldThread();
  const starts: ThreadStart[] = [];
  const crew = crewOf((start) => {
    starts.push(start);
    return thread;
  });
  crew.proveAhead(0);
  const [start] = starts;
  if (start === undefined) throw new Error('no thread was started');
  return { crew, thread, start };
}

describe('a thread that is being ended', () => {
  test('may wake meanwhile: it is not waited for, however often it is asked to end', async () => {
    const { crew, thread } = heldCrew();
    thread.lastWords = AWAKE;
    await Promise.all([crew.stop(), crew.stop()]);
    await crew.stop();
    expect(thread.endings).toBe(1);
  });

  test('may have woken between the first time and the second', async () => {
    const { crew, thread } = heldCrew();
    const first = crew.stop();
    thread.tell(AWAKE);
    await Promise.all([first, crew.stop()]);
    expect(thread.endings).toBe(1);
  });

  test('is asked for what it has found by now', async () => {
    const { crew, thread, start } = heldCrew();
    thread.tell(AWAKE);
    const stopped = Promise.all([crew.stop(), crew.stop()]);
    // It sees the end of its stretch, and answers.
    expect(Atomics.load(start.ended, 0)).toBe(1);
    expect(thread.endings).toBe(0);
    thread.tell({ number: 1, found });
    await stopped;
    expect(crew.news.floor).toBe(FLOOR);
    expect(thread.endings).toBe(1);
  });

  test('is not waited for long', async () => {
    const { crew, thread } = heldCrew();
    thread.tell(AWAKE);
    await crew.stop();
    expect(crew.news.floor).toBe(0);
    expect(thread.endings).toBe(1);
  });

  test('may answer when nobody asks any more', async () => {
    const { crew, thread } = heldCrew();
    thread.lastWords = { number: 1, found };
    await crew.stop();
    expect(crew.news.floor).toBe(0);
  });

  test('may die instead of its answer: that is told, each time', async () => {
    const { crew, thread } = heldCrew();
    thread.tell(AWAKE);
    const stopped = crew.stop();
    thread.emit('exit', 9);
    await expect(stopped).rejects.toThrow('with 9');
    await expect(crew.stop()).rejects.toThrow('with 9');
    expect(thread.endings).toBe(1);
  });
});

describe('a thread that is not needed any more', () => {
  function keptOf(): { readonly crew: Crew; readonly thread: HeldThread; readonly kept: Thread[] } {
    const thread = new HeldThread();
    const kept: Thread[] = [];
    const options = { workers: 2, isAudited: false, now: () => performance.now(), startThread: () => thread };
    return { crew: new Crew(shop, 1, { ...options, keepThread: (one) => kept.push(one) }), thread, kept };
  }

  test('is kept when it has answered, and nobody listens to it', async () => {
    const { crew, thread, kept } = keptOf();
    crew.proveAhead(0);
    thread.tell(AWAKE);
    const stopped = crew.stop();
    thread.tell({ number: 1, found });
    await stopped;
    expect(crew.news.floor).toBe(FLOOR);
    expect(kept).toEqual([thread]);
    expect(thread.endings).toBe(0);
    expect(thread.eventNames()).toEqual([]);
  });

  test('is kept when it was never asked', async () => {
    const { crew, thread, kept } = keptOf();
    thread.tell(AWAKE);
    await crew.stop();
    expect(kept).toEqual([thread]);
  });

  test('is ended when it does not wake', async () => {
    const { crew, thread, kept } = keptOf();
    crew.proveAhead(0);
    await crew.stop();
    expect(kept).toEqual([]);
    expect(thread.endings).toBe(1);
  });

  test('is ended when it has died', async () => {
    const { crew, thread, kept } = keptOf();
    thread.tell(AWAKE);
    thread.emit('exit', 9);
    await expect(crew.stop()).rejects.toThrow('with 9');
    expect(kept).toEqual([]);
  });

  test('is taken for the next problem, and works it as a fresh one does', { timeout: 60_000 }, async () => {
    const taken: Thread[] = [];
    const startThread = (start: ThreadStart): Thread => {
      const thread = startLaneThread(start);
      taken.push(thread);
      return thread;
    };
    const news: News[] = [];
    for (const problem of [shop, otherShop, shop]) {
      const options = { workers: 2, isAudited: false, now: () => performance.now(), startThread, keepThread: keepLaneThread };
      const crew = new Crew(problem, 1, options);
      await crew.work(BY_ROUNDS);
      await crew.stop();
      news.push(crew.news);
    }
    expect(new Set(taken).size).toBe(1);
    const [first, other, again] = news;
    expect(first?.total).toBe(5);
    expect(other?.total).toBe(8);
    expect(again).toEqual(first);
  });

  test('argues the floor first, where it is to', { timeout: 60_000 }, async () => {
    const crew = new Crew(otherShop, 1, { workers: 2, isAudited: false, argues: true, now: () => performance.now() });
    expect(crew.argued).toBeNull();
    await crew.work(BY_ROUNDS);
    await crew.stop();
    expect(crew.argued).toEqual(argue(otherShop, new Paths(otherShop, otherShop.problem)));
    expect(crew.argued?.all.value).toBeGreaterThan(0);
  });
});

const BY_ROUNDS: Orders = { heat: 0.01, roundsLeft: 1000, untilMs: Number.POSITIVE_INFINITY };
const BY_CLOCK: Orders = { ...BY_ROUNDS, roundsLeft: Number.POSITIVE_INFINITY };

const DEATHS = [
  ['by an error', "throw new RangeError('too far')", 'too far'],
  ['by an error nobody caught', "void Promise.reject(new RangeError('too far'))", 'too far'],
  ['by its memory', 'const held = []; for (;;) held.push(new Array(1000).fill(held.length))', /memory/],
  ['without a word', 'process.exit(7)', 'with 7'],
] as const;

describe('a thread that dies', () => {
  /** A crew whose lane elsewhere runs this code, and what resolves when it has ended. */
  function crewThatRuns(code: string): { readonly crew: Crew; readonly ended: Promise<unknown> } {
    const worker = new Worker(code, { eval: true, resourceLimits: { maxOldGenerationSizeMb: 16 } });
    return { crew: crewOf(() => worker), ended: new Promise((resume) => worker.once('exit', resume)) };
  }

  const onceAsked = (code: string): string => `require('node:worker_threads').parentPort.once('message', () => { ${code} })`;

  describe.each(DEATHS)('%s', (_, code, says) => {
    test('before it is asked for anything', async () => {
      const { crew, ended } = crewThatRuns(code);
      await ended;
      await expect(crew.work(BY_ROUNDS)).rejects.toThrow(says);
      await expect(crew.stop()).rejects.toThrow(says);
    });

    test('at its work, where rounds are counted', async () => {
      const { crew } = crewThatRuns(onceAsked(code));
      await expect(crew.work(BY_ROUNDS)).rejects.toThrow(says);
      await expect(crew.stop()).rejects.toThrow(says);
    });

    test('at its work, where the clock decides', async () => {
      const { crew, ended } = crewThatRuns(onceAsked(code));
      crew.proveAhead(0);
      await ended;
      await expect(crew.work(BY_CLOCK)).rejects.toThrow(says);
      await expect(crew.stop()).rejects.toThrow(says);
    });

    test('when nobody looks after it any more but to end it', async () => {
      const { crew, ended } = crewThatRuns(onceAsked(code));
      crew.proveAhead(0);
      await ended;
      await expect(crew.stop()).rejects.toThrow(says);
    });
  });

  test('and what it could not send', async () => {
    const { crew, thread } = heldCrew();
    thread.emit('messageerror', new Error('no such thing can be sent'));
    await expect(crew.stop()).rejects.toThrow('no such thing');
  });

  test('leaves nothing behind that keeps the process alive', async () => {
    const timers = (): number => process.getActiveResourcesInfo().filter((name) => name === 'Timeout').length;
    const before = timers();
    const { crew } = crewThatRuns(onceAsked('process.exit(7)'));
    await expect(crew.work(BY_ROUNDS)).rejects.toThrow('with 7');
    expect(timers()).toBeLessThanOrEqual(before);
  });
});

/** Holds the program up for so many milliseconds when it first pauses: its threads wake sooner than they would beside it. */
const heldUpFor = (ms: number) =>
  `data:text/javascript,${encodeURIComponent(`
    const { setImmediate } = globalThis;
    let until;
    globalThis.setImmediate = (...asked) => {
      until ??= performance.now() + ${ms};
      while (performance.now() < until);
      return setImmediate(...asked);
    };
  `)}`;

// A day proved after a few stretches, while the thread wakes or just has; the pauses move the one against the other.
test.each([0, 40, 80, 160])('a day proved at once always ends with a plan: held up for %d ms', { timeout: 60_000 }, (ms) => {
  const words = ['plan', 'scenarios/no-wait-four-doughs.yaml', '--workers', '2', '--seconds', '20', '--json'];
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', heldUpFor(ms), 'scripts/ovenward.mjs', ...words], {
    cwd: resolve(import.meta.dirname, '../..'),
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: expect.stringContaining('no plan costs less') });
  expect(planSchema.parse(JSON.parse(stdout)).holds).toBe('optimal');
});
