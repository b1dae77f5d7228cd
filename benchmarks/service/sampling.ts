// Samples taken one after the other while something goes on, and their percentiles. Used by run/service.ts.

/** The value below which this share of the samples lies; the nearest rank. */
export function percentile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

/** Takes a sample every so many ms until the returned function is called; that one resolves with all of them. */
export function sampling(everyMs: number, sample: () => Promise<number>): () => Promise<readonly number[]> {
  const samples: number[] = [];
  let isOver = false;
  const done = (async () => {
    while (!isOver) {
      samples.push(await sample());
      await new Promise((resolve) => setTimeout(resolve, everyMs));
    }
  })();
  return async () => {
    isOver = true;
    await done;
    return samples;
  };
}
