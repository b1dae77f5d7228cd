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

type Waiting = {
  readonly model: Model;
  readonly limitMs: number;
  readonly settle: (answer: LinearAnswer | null) => void;
};

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

/** In the order asked; the thread works on the first. */
const waiting = new Map<number, Waiting>();
let thread: Worker | null = null;
let lastId = 0;
/** Runs while the thread works on the first. */
let timer: NodeJS.Timeout | undefined;

function settle(id: number, answer: LinearAnswer | null): void {
  const settled = waiting.get(id);
  waiting.delete(id);
  settled?.settle(answer);
  watchFirst();
}

function watchFirst(): void {
  clearTimeout(timer);
  const [first] = waiting;
  if (first === undefined) return;
  const [id, { limitMs }] = first;
  // Where this thread was busy its time may be up and its answer still unheard: messages come before what is put off so.
  timer = setTimeout(() => setImmediate(() => giveUp(id)), limitMs);
}

/** Ends the thread if it still works on this program, and gives the others to another. */
function giveUp(id: number): void {
  if (!waiting.has(id)) return;
  const ended = thread;
  thread = null;
  void ended?.terminate();
  settle(id, null);
  for (const [other, { model }] of waiting) running().postMessage({ id: other, model });
}

function running(): Worker {
  if (thread !== null) return thread;
  const started = new Worker(THREAD, { eval: true, workerData: SOLVER_PATH });
  started.on('message', ({ id, answer }: { readonly id: number; readonly answer: LinearAnswer }) => settle(id, answer));
  started.on('error', () => {
    if (thread !== started) return;
    const [first] = waiting.keys();
    if (first === undefined) thread = null;
    else giveUp(first);
  });
  started.unref();
  thread = started;
  return started;
}

/** Has the thread ready for the first program. */
export function wakeLinearThread(): void {
  running();
}

/**
 * Minimises or maximises a program; null when it takes longer than `limitMs`, the time the thread is at it, or the solver fails. Zeros are
 * absent from the answer. Programs are solved in the order asked.
 */
export function solveLinear(model: Model, limitMs: number): Promise<LinearAnswer | null> {
  return new Promise((resolve) => {
    lastId += 1;
    const id = lastId;
    waiting.set(id, { model, limitMs, settle: resolve });
    if (waiting.size === 1) watchFirst();
    running().postMessage({ id, model });
  });
}
