// The threads as the line of work sees them; tests put others in their place. The real ones are openCrew.ts.
import type { ThreadAnswer, ThreadNews } from './threadTask.ts';
import type { Ask } from './work.ts';

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
  draw(what: 'pages' | 'comparison', json: string): Promise<readonly string[]>;
  /** Whether a day of one tray was planned. */
  planTinyDay(): Promise<boolean>;
  close(): Promise<void>;
}
