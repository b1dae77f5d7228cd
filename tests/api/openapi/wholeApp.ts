// The service on the day of the examples, for tests that ask more than a client may.
import { type Running, running } from '../running.ts';

/** Five in the morning of that day. */
const INSTANT = '2026-04-08T03:00:00.000Z';

export function wholeApp(): Promise<Running> {
  const limits = { mostSeconds: 30, usualSeconds: 2, requestsPerMinute: 1_000_000, bodyKb: 1000 };
  return running({ instant: () => INSTANT, limits }, { graceMs: 0 }, { places: 8 });
}
