// Starts the thread of a lane. Used by crew.ts.
import { Worker } from 'node:worker_threads';
import type { ThreadStart } from './laneThread.ts';

/** Run from the sources, as the tests do, a thread has to be taught TypeScript before it can begin. */
const IS_SOURCE = import.meta.url.endsWith('.ts');
const FROM_SOURCE = `import('tsx/esm/api').then(({ register }) => {
  register();
  return import(${JSON.stringify(new URL('./laneThread.ts', import.meta.url).href)});
});`;

export function startLaneThread(workerData: ThreadStart): Worker {
  if (IS_SOURCE) return new Worker(FROM_SOURCE, { eval: true, workerData });
  return new Worker(new URL('./laneThread.js', import.meta.url), { workerData });
}
