// Threads waked before they are wanted: one is enough, the next search takes it, one that died is not taken, none keeps a process alive.
import { spawnSync } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import type { Thread } from '../../src/solver/laneElsewhere.ts';
import type { ThreadAsk, ThreadStart } from '../../src/solver/laneThread.ts';
import { keepLaneThread, startLaneThread, wakeLaneThread } from '../../src/solver/startLaneThread.ts';
import { EMPTY } from './shops.ts';

class IdleThread extends EventEmitter implements Thread {
  readonly told: (ThreadStart | ThreadAsk)[] = [];
  endings = 0;

  postMessage(message: ThreadStart | ThreadAsk): void {
    this.told.push(message);
  }

  ref(): void {}

  unref(): void {}

  async terminate(): Promise<void> {
    this.endings++;
  }
}

const START: ThreadStart = {
  problem: { ...EMPTY, tasks: [], units: [] },
  seed: 1,
  task: 'prove',
  isAudited: false,
  argues: false,
  ended: new Int32Array(new SharedArrayBuffer(4)),
};

test('the next search takes the thread that waits, and tells it its problem', () => {
  const thread = new IdleThread();
  keepLaneThread(thread);
  expect(startLaneThread(START)).toBe(thread);
  expect(thread.told).toEqual([START]);
  expect(thread.eventNames()).toEqual([]);
});

test('one is enough: another is ended, and none is waked beside one that waits', () => {
  const [first, second] = [new IdleThread(), new IdleThread()];
  keepLaneThread(first);
  keepLaneThread(second);
  wakeLaneThread();
  expect([first.endings, second.endings]).toEqual([0, 1]);
  expect(startLaneThread(START)).toBe(first);
});

test.each([
  ['error', new Error('no memory')],
  ['exit', 1],
])('one that died of an %s is not taken', async (event, word) => {
  const thread = new IdleThread();
  keepLaneThread(thread);
  thread.emit(event, word);
  const other = startLaneThread(START);
  expect(other).not.toBe(thread);
  await other.terminate();
});

test('a process that wakes threads and then has nothing to do ends', { timeout: 60_000 }, () => {
  const code = "import('./src/solver/wakeThreads.ts').then(({ wakeThreads }) => wakeThreads(2))";
  const { status, stderr } = spawnSync(process.execPath, ['--import', 'tsx', '-e', code], {
    cwd: resolve(import.meta.dirname, '../..'),
    encoding: 'utf8',
    timeout: 30_000,
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
});
