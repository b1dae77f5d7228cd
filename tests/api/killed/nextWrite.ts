// Waits for the moment at which the service writes to its store: the death that tears, if any does, is the one between two writes of
// what belongs together. Used by manyRounds.ts.
import { watch } from 'node:fs';

/** Who writes all the time is never quiet for so long, in milliseconds. */
const AT_MOST_MS = 1000;

/** Resolves as soon as the system tells that the log of the store has changed. */
export function nextWrite(store: string): Promise<void> {
  return new Promise((resolve) => {
    const log = watch(`${store}-wal`);
    const end = (): void => {
      clearTimeout(timer);
      log.close();
      resolve();
    };
    const timer = setTimeout(end, AT_MOST_MS);
    log.once('change', end);
  });
}
