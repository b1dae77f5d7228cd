// How tests have questions asked: without a clock, so that rounds alone end a search and every run gives the same.
import type { Asking } from '../../src/questions/asking.ts';

export function askingFor(changes: Partial<Asking> = {}): Asking {
  return {
    seed: 1,
    workers: 1,
    now: () => 0,
    untilMs: Number.POSITIVE_INFINITY,
    cancelled: () => false,
    pause: () => Promise.resolve(),
    version: 'test',
    ...changes,
  };
}
