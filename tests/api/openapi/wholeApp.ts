// The whole service as an app on a free port, over a store in memory; searches run in the test's own thread, with small efforts.
import { createServer } from 'node:http';
import { pino } from 'pino';
import { createApp } from '../../../src/api/createApp.ts';
import { openJobs } from '../../../src/api/jobs/openJobs.ts';
import type { ApiParts } from '../../../src/api/parts.ts';
import { Metrics } from '../../../src/api/telling/metrics.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { inlineCrew } from '../routes/inlineCrew.ts';

export type WholeApp = {
  readonly url: string;
  readonly parts: ApiParts;
  readonly faults: readonly unknown[];
  readonly stop: () => Promise<void>;
};

/** Five in the morning of the day of the examples. */
const INSTANT = '2026-04-08T03:00:00.000Z';

async function realParts(): Promise<Pick<WholeApp, 'parts' | 'faults'>> {
  const faults: unknown[] = [];
  const report = (fault: unknown): void => {
    faults.push(fault);
  };
  const store = await openStore(':memory:');
  const limits = { mostSeconds: 30, usualSeconds: 2, requestsPerMinute: 1_000_000, bodyKb: 1000 };
  const shared = { now: () => performance.now(), instant: () => INSTANT, version: '1.2.3', report, store };
  const jobs = await openJobs({ ...shared, threads: 1, places: 8, mostSeconds: limits.mostSeconds, crew: inlineCrew() });
  const parts: ApiParts = {
    ...shared,
    jobs,
    log: pino({ level: 'silent' }),
    metrics: new Metrics(),
    limits,
    token: null,
  };
  return { parts, faults };
}

export async function wholeApp(): Promise<WholeApp> {
  const { parts, faults } = await realParts();
  const server = createServer(createApp(parts));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('The server has no address');
  const stop = async (): Promise<void> => {
    server.closeAllConnections();
    server.close();
    await parts.jobs.close(0);
    await parts.store.close();
  };
  return { url: `http://127.0.0.1:${address.port}`, parts, faults, stop };
}
