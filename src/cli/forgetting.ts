// Has the store forget what nobody needs any more, at the start and once an hour. Used by serving.ts.
import type { ApiParts } from '../api/parts.ts';

const EVERY_MS = 3_600_000;
const DAY_MS = 86_400_000;

/** Returns what ends it. Plans that were posted are kept for good. */
export function forgetting({ store, log, instant, report }: ApiParts, keepDays: number): () => void {
  const forget = async (): Promise<void> => {
    try {
      const forgotten = await store.forget(new Date(Date.parse(instant()) - keepDays * DAY_MS).toISOString());
      if (forgotten > 0) log.info({ forgotten }, 'old work forgotten');
    } catch (fault) {
      report(fault);
    }
  };
  void forget();
  const timer = setInterval(() => void forget(), EVERY_MS);
  return () => clearInterval(timer);
}
