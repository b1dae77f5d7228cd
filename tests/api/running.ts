// The service on a free port of this machine, with real parts unless a test hands in others; and ways to ask it.
import { request } from 'node:http';
import { pino } from 'pino';
import { onTestFinished } from 'vitest';
import { type JobsOptions, openJobs } from '../../src/api/jobs/openJobs.ts';
import type { ApiParts } from '../../src/api/parts.ts';
import { type Service, type ServiceSettings, startService } from '../../src/api/service.ts';
import { Metrics } from '../../src/api/telling/metrics.ts';
import { openStore } from '../../src/store/openStore.ts';
import { inlineCrew } from './routes/inlineCrew.ts';

export type Running = Service & { readonly faults: readonly unknown[]; readonly parts: ApiParts };

/** Over a store in memory. Searches run in the test's own thread unless `jobs` says otherwise. */
export async function running(
  over: Partial<ApiParts> = {},
  settings: Partial<ServiceSettings> = {},
  jobs: Partial<JobsOptions> = {},
): Promise<Running> {
  const faults: unknown[] = [];
  const shared = {
    store: over.store ?? (await openStore(':memory:')),
    now: over.now ?? (() => performance.now()),
    instant: over.instant ?? (() => new Date().toISOString()),
    version: over.version ?? '1.2.3',
    report:
      over.report ??
      ((fault: unknown) => {
        faults.push(fault);
      }),
  };
  const limits = { mostSeconds: 30, usualSeconds: 2, requestsPerMinute: 100_000, bodyKb: 1000 };
  const parts: ApiParts = {
    ...shared,
    jobs: await openJobs({ threads: 1, mostSeconds: limits.mostSeconds, crew: inlineCrew(), ...shared, ...jobs }),
    log: pino({ level: 'silent' }),
    metrics: new Metrics(),
    limits,
    token: null,
    ...over,
  };
  const service = await startService(parts, { port: 0, ...settings });
  return { ...service, faults, parts };
}

/** A service that ends with the test that asked for it. */
export async function runningHere(...asked: Parameters<typeof running>): Promise<Running> {
  const service = await running(...asked);
  onTestFinished(() => service.stop());
  return service;
}

export type Answer = {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
};

export type Asked = {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Uint8Array;
};

/** Asks with headers exactly as given, Host included, on a connection of its own. */
export function ask(url: string, { method = 'GET', headers = {}, body }: Asked = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(url, { method, headers, agent: false }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('error', reject);
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text: Buffer.concat(chunks).toString('utf8') }),
      );
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

export function askJson(url: string, value: unknown, headers: Readonly<Record<string, string>> = {}): Promise<Answer> {
  return ask(url, { method: 'POST', headers: { 'Content-Type': 'application/json', ...headers }, body: JSON.stringify(value) });
}

export function askYaml(url: string, body: string, headers: Readonly<Record<string, string>> = {}): Promise<Answer> {
  return ask(url, { method: 'POST', headers: { 'Content-Type': 'application/yaml', ...headers }, body });
}

/** For those who want to have what they ask for before they go on. */
export const WAIT = { Prefer: 'wait=60' };

/** Waits until something is so; the test's own time limit ends it otherwise. */
export async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await isSo())) await new Promise((resolve) => setTimeout(resolve, 10));
}
