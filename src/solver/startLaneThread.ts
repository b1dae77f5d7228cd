// Starts the thread of a lane, or takes one that was waked ahead: a thread takes as long to begin as a small day to be read.
// Used by crew.ts and wakeThreads.ts.
import { Worker } from 'node:worker_threads';
import type { Thread } from './laneElsewhere.ts';
import type { ThreadStart } from './laneThread.ts';

/** Run from the sources, as the tests do, a thread has to be taught TypeScript before it can begin. */
const IS_SOURCE = import.meta.url.endsWith('.ts');
const FROM_SOURCE = `import('tsx/esm/api').then(({ register }) => {
  register();
  return import(${JSON.stringify(new URL('./laneThread.ts', import.meta.url).href)});
});`;

/** Awake or waking, and without a problem. */
let waiting: Thread | null = null;

function newThread(): Thread {
  if (IS_SOURCE) return new Worker(FROM_SOURCE, { eval: true });
  return new Worker(new URL('./laneThread.js', import.meta.url));
}

function forget(): void {
  waiting = null;
}

/** Has one thread ready for the next lane that wants one. It does not keep the process alive. */
export function wakeLaneThread(): void {
  if (waiting === null) keepLaneThread(newThread());
}

/** Keeps a thread that nobody listens to for the next lane; one is enough. */
export function keepLaneThread(thread: Thread): void {
  if (waiting !== null) {
    void thread.terminate();
    return;
  }
  waiting = thread;
  // What ails it ails the one that is started in its place too, and is told then.
  thread.on('error', forget);
  thread.on('exit', forget);
  thread.unref();
}

export function startLaneThread(start: ThreadStart): Thread {
  const thread = waiting ?? newThread();
  forget();
  thread.removeAllListeners();
  thread.postMessage(start);
  return thread;
}
