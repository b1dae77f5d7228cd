// GET /metrics: figures for whoever watches the service.
import type { RequestHandler } from 'express';
import type { Jobs } from '../jobs/jobs.ts';
import type { Metrics } from '../telling/metrics.ts';

export function metricsRoute(metrics: Metrics, jobs: Pick<Jobs, 'running' | 'waiting' | 'lightWaiting'>): RequestHandler {
  return async (_request, response) => {
    const text = await metrics.text(jobs);
    response.type(metrics.contentType).send(text);
  };
}
