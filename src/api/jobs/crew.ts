// The threads as the line of work sees them; tests put others in their place. The real ones are openCrew.ts.
import type { Done, Given, LightKind } from '../light/lightWork.ts';
import type { ThreadAnswer, ThreadNews } from './threadTask.ts';
import type { Ask } from './work.ts';

/** Threads for light work. A reading takes milliseconds to tenths of a second, so few are enough, and one that takes long leaves another. */
export const LIGHT_THREADS = 2;

export type Search = {
  readonly answer: Promise<ThreadAnswer>;
  /** Asks it to end with its best, soon. */
  readonly stop: () => void;
  /** Ends its thread; the answer is rejected. A last resort. */
  readonly kill: () => void;
};

export interface Crew {
  /** Has every thread load what it needs for its first piece of work. Resolves when that is done, whatever comes of it. */
  warmUp(): Promise<void>;
  /** To be called for no more searches at once than there are threads. */
  search(ask: Ask, told: (news: ThreadNews) => void): Search;
  /** To be called for no more at once than LIGHT_THREADS. Rejected when the thread fails. */
  light<K extends LightKind>(kind: K, given: Given<K>): Promise<Done<K>>;
  /** Whether a day of one tray was planned. It waits neither for searches nor for light work. */
  planTinyDay(): Promise<boolean>;
  close(): Promise<void>;
}
