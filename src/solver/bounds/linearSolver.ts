// javascript-lp-solver in a worker thread. On some degenerate programs its simplex never ends, and a thread can be ended
// from outside. One thread serves all solves of the process and does not keep the process alive.
import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';
import type { Model } from 'javascript-lp-solver';

export type LinearAnswer = {
  readonly feasible: boolean;
  readonly result: number;
  readonly values: Readonly<Record<string, number>>;
};

type Waiting = { readonly settle: (answer: LinearAnswer | null) => void };

// The package describes an ES module as CommonJS in its types; as CommonJS it is what it says.
const SOLVER_PATH = createRequire(import.meta.url).resolve('javascript-lp-solver');

const THREAD = `
const { parentPort, workerData } = require('node:worker_threads');
const solver = require(workerData);
parentPort.on('message', ({ id, model }) => {
  const answer = solver.Solve(model);
  const values = {};
  for (const [key, value] of Object.entries(answer)) {
    if (typeof value === 'number' && key !== 'result') values[key] = value;
  }
  parentPort.postMessage({ id, answer: { feasible: answer.feasible === true, result: Number(answer.result), values } });
});
`;

const waiting = new Map<number, Waiting>();
let thread: Worker | null = null;
let lastId = 0;

function drop(): void {
  const ended = thread;
  thread = null;
  for (const { settle } of waiting.values()) settle(null);
  waiting.clear();
  void ended?.terminate();
}

function running(): Worker {
  if (thread !== null) return thread;
  const started = new Worker(THREAD, { eval: true, workerData: SOLVER_PATH });
  started.on('message', ({ id, answer }: { readonly id: number; readonly answer: LinearAnswer }) => {
    waiting.get(id)?.settle(answer);
    waiting.delete(id);
  });
  started.on('error', () => {
    if (thread === started) drop();
  });
  started.unref();
  thread = started;
  return started;
}

/** Has the thread ready for the first program. */
export function wakeLinearThread(): void {
  running();
}

/** Minimises or maximises a program; null when it takes longer than `limitMs` or the solver fails. Zeros are absent. */
export function solveLinear(model: Model, limitMs: number): Promise<LinearAnswer | null> {
  return new Promise((resolve) => {
    lastId += 1;
    const id = lastId;
    const timer = setTimeout(drop, limitMs);
    waiting.set(id, {
      settle: (answer) => {
        clearTimeout(timer);
        resolve(answer);
      },
    });
    running().postMessage({ id, model });
  });
}
