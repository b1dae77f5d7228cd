// Waits for something, but not for ever, and not when nobody wants it any more. Used by jobBook.ts and runJob.ts.

/** Resolves when `settled` does, when `ms` are over or when `gone` says so. A rejection is left to whoever else waits for it. */
export function within(settled: Promise<unknown>, ms: number, gone?: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const done = (): void => {
      clearTimeout(timer);
      gone?.removeEventListener('abort', done);
      resolve();
    };
    const timer = setTimeout(done, Math.min(ms, 2 ** 31 - 1));
    gone?.addEventListener('abort', done);
    if (gone?.aborted === true) done();
    settled.then(done, done);
  });
}
