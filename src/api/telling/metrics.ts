// Figures of the running service in the text format of Prometheus: requests, work, the process itself. Held in ApiParts, read at /metrics.
import type { RequestHandler } from 'express';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import { HOLDS } from '../../model/plan.ts';
import type { Jobs } from '../jobs/jobs.ts';
import type { Work } from '../jobs/work.ts';
import { routeName, WATCHED } from './routeName.ts';

/** Methods told by their names; what else somebody makes up is `other`, so that labels stay few. */
const METHODS: ReadonlySet<string> = new Set(['GET', 'HEAD', 'POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH']);

/** Seconds. A look at the posted plan takes a few milliseconds, a request that waits for its plan half a minute. */
const DURATIONS = [0.005, 0.02, 0.05, 0.1, 0.3, 1, 3, 10, 30, 100];

/** How often the delay of the event loop is looked at, in milliseconds. */
const DELAY_PRECISION_MS = 10;

/** What a plan holds in the end; `none` when there is no plan. */
function holdsOf({ kind, answer }: Work): string {
  if (kind !== 'plan' || answer === null || !('holds' in answer)) return 'none';
  return HOLDS.find((holds) => holds === answer.holds) ?? 'none';
}

export class Metrics {
  readonly #registry = new Registry();
  readonly #requests = new Counter({
    name: 'ovenward_requests_total',
    help: 'Requests answered or given up.',
    labelNames: ['method', 'route', 'status'],
    registers: [this.#registry],
  });
  readonly #durations = new Histogram({
    name: 'ovenward_request_seconds',
    help: 'From the first line of a request to the end of its answer; without answers that go on while somebody follows.',
    labelNames: ['method', 'route', 'status'],
    buckets: DURATIONS,
    registers: [this.#registry],
  });
  readonly #refused = new Counter({
    name: 'ovenward_requests_refused_total',
    help: 'Requests answered 503: the line was full, or the service was stopping.',
    labelNames: ['route'],
    registers: [this.#registry],
  });
  readonly #running = new Gauge({ name: 'ovenward_work_running', help: 'Work being done.', registers: [this.#registry] });
  readonly #waiting = new Gauge({ name: 'ovenward_work_waiting', help: 'Work in the line.', registers: [this.#registry] });
  readonly #lightWaiting = new Gauge({
    name: 'ovenward_light_waiting',
    help: 'Requests that wait to be read, judged or drawn.',
    registers: [this.#registry],
  });
  readonly #ended = new Counter({
    name: 'ovenward_work_ended_total',
    help: 'Work that has ended, and what a plan then held.',
    labelNames: ['kind', 'state', 'holds'],
    registers: [this.#registry],
  });

  constructor() {
    collectDefaultMetrics({ register: this.#registry, eventLoopMonitoringPrecision: DELAY_PRECISION_MS });
  }

  /** Media type of `text`. */
  get contentType(): string {
    return this.#registry.contentType;
  }

  /** Counts every request once it is over. */
  readonly observe: RequestHandler = (request, response, next) => {
    const { route } = routeName(request.originalUrl.split('?')[0] ?? '');
    const method = METHODS.has(request.method) ? request.method : 'other';
    const stopClock = this.#durations.startTimer();
    response.once('close', () => {
      // A client that left before its answer began has no status; nobody waits for the end of an answer that goes on.
      const status = response.headersSent ? `${Math.floor(response.statusCode / 100)}xx` : 'gone';
      const labels = { method, route, status };
      this.#requests.inc(labels);
      if (response.headersSent && response.statusCode === 503 && !WATCHED.has(route)) this.#refused.inc({ route });
      if (!route.endsWith('/events')) stopClock(labels);
    });
    next();
  };

  /** To be told of all work that has ended. */
  readonly workEnded = (work: Work): void => {
    this.#ended.inc({ kind: work.kind, state: work.state, holds: holdsOf(work) });
  };

  async text({ running, waiting, lightWaiting }: Pick<Jobs, 'running' | 'waiting' | 'lightWaiting'>): Promise<string> {
    this.#running.set(running);
    this.#waiting.set(waiting);
    this.#lightWaiting.set(lightWaiting);
    return this.#registry.metrics();
  }
}
