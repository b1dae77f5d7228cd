// What the service is put together from. `ovenward serve` hands in the real parts; a test may hand in others.
import type { Logger } from 'pino';
import type { Store } from '../store/store.ts';
import type { Jobs } from './jobs/jobs.ts';
import type { Metrics } from './telling/metrics.ts';
import type { Report } from './telling/report.ts';

export type ApiLimits = {
  /** Longest search anybody may ask for, in seconds. */
  readonly mostSeconds: number;
  /** Seconds of a search for which nobody says how long. */
  readonly usualSeconds: number;
  readonly requestsPerMinute: number;
  /** Largest body, in kB of 1000 bytes. */
  readonly bodyKb: number;
};

export type ApiParts = {
  /** A clock in milliseconds. */
  readonly now: () => number;
  /** The time now: RFC 3339 in UTC, to the millisecond. */
  readonly instant: () => string;
  readonly store: Store;
  readonly jobs: Jobs;
  readonly log: Logger;
  readonly metrics: Metrics;
  readonly limits: ApiLimits;
  /** What requests have to show in Authorization; null: nothing. */
  readonly token: string | null;
  /** IANA time zone in which `today` is asked. Default: that of the plan posted last, else that of the machine. */
  readonly timeZone?: string;
  /** Between two signs of life on a stream of events, in milliseconds. Default 15,000. */
  readonly heartbeatMs?: number;
  /** Version of this program. */
  readonly version: string;
  /** Told of every fault of ours; the client learns only that there was one. */
  readonly report: Report;
};
