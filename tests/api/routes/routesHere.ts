// Scenarios, plans, questions and days on a free port, over a store in memory; searches and drawings run in the test's own thread.
import { createServer } from 'node:http';
import express from 'express';
import { pino } from 'pino';
import { onTestFinished } from 'vitest';
import { answerProblem } from '../../../src/api/answerProblem.ts';
import { openJobs } from '../../../src/api/jobs/openJobs.ts';
import type { ApiParts } from '../../../src/api/parts.ts';
import { dayRoutes } from '../../../src/api/routes/days.ts';
import { plans } from '../../../src/api/routes/plans.ts';
import { questionRoutes } from '../../../src/api/routes/questions.ts';
import { scenarioRoutes } from '../../../src/api/routes/scenarios.ts';
import { workRoutes } from '../../../src/api/routes/workRoutes.ts';
import { Metrics } from '../../../src/api/telling/metrics.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { inlineCrew } from './inlineCrew.ts';

export type RoutesHere = {
  readonly url: string;
  readonly parts: ApiParts;
  readonly faults: readonly unknown[];
  readonly drawn: { readonly count: number };
  /** The time now, to be set. */
  readonly clock: { instant: string };
};

async function realParts(over: Partial<ApiParts>): Promise<Omit<RoutesHere, 'url'>> {
  const faults: unknown[] = [];
  const clock = { instant: '2026-04-08T03:30:00.000Z' };
  const crew = inlineCrew();
  const store = await openStore(':memory:');
  const shared = { now: () => performance.now(), instant: () => clock.instant, version: '1.2.3' };
  const report = (fault: unknown): void => {
    faults.push(fault);
  };
  const limits = { mostSeconds: 30, usualSeconds: 2, requestsPerMinute: 10_000, bodyKb: 1000 };
  const jobs = await openJobs({ ...shared, store, threads: 1, mostSeconds: limits.mostSeconds, report, crew });
  const parts: ApiParts = {
    ...shared,
    store,
    jobs,
    log: pino({ level: 'silent' }),
    metrics: new Metrics(),
    limits,
    token: null,
    report,
    ...over,
  };
  onTestFinished(async () => {
    await jobs.close(1000);
    await store.close();
  });
  return { parts, faults, drawn: crew.drawn, clock };
}

export async function routesHere(over: Partial<ApiParts> = {}): Promise<RoutesHere> {
  const here = await realParts(over);
  const app = express().disable('etag').set('query parser', 'simple').set('case sensitive routing', true);
  app.use('/v1/scenarios', scenarioRoutes(here.parts));
  app.use('/v1/plans', workRoutes(here.parts, plans(here.parts)));
  app.use('/v1', questionRoutes(here.parts));
  app.use('/v1/days', dayRoutes(here.parts));
  app.use(answerProblem(here.parts.report));
  const server = createServer(app);
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  const url = await new Promise<string>((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? `http://127.0.0.1:${address.port}` : '');
    });
  });
  return { ...here, url };
}
