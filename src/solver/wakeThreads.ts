// Wakes the threads a solve will want while its problem is still being read. Called by whoever knows that a solve follows.
import { wakeLinearThread } from './bounds/linearSolver.ts';
import { wakeLaneThread } from './startLaneThread.ts';

/** For a solve with so many workers. Threads do not keep the process alive. */
export function wakeThreads(workers: number): void {
  wakeLinearThread();
  if (workers > 1) wakeLaneThread();
}
