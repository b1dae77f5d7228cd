// The service on a free port of this machine, with real parts unless a test hands in others; and ways to ask it.
import { request } from 'node:http';
import { onTestFinished } from 'vitest';
import type { ApiParts } from '../../src/api/parts.ts';
import { type Service, type ServiceSettings, startService } from '../../src/api/service.ts';
import { judge } from '../../src/check/judge.ts';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { whatToDo } from '../../src/draw/whatToDo.ts';
import { makePlan } from '../../src/planning.ts';
import { readWrittenPlan } from '../../src/read/readPlan.ts';
import { readScenario, readScenarioValue } from '../../src/read/readScenario.ts';

export type Running = Service & { readonly faults: readonly unknown[] };

export async function running(parts: Partial<ApiParts> = {}, settings: Partial<ServiceSettings> = {}): Promise<Running> {
  const faults: unknown[] = [];
  const real: ApiParts = {
    readScenario,
    readScenarioValue,
    readWrittenPlan,
    makePlan,
    judge,
    drawPlan,
    whatToDo,
    now: () => performance.now(),
    pause: () => new Promise((resolve) => setImmediate(resolve)),
    version: '1.2.3',
    report: (fault) => faults.push(fault),
  };
  const service = await startService({ ...real, ...parts }, { port: 0, ...settings });
  return { ...service, faults };
}

/** A service that ends with the test that asked for it. */
export async function runningHere(parts: Partial<ApiParts> = {}, settings: Partial<ServiceSettings> = {}): Promise<Running> {
  const service = await running(parts, settings);
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

/** Waits until something is so; the test's own time limit ends it otherwise. */
export async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await isSo())) await new Promise((resolve) => setTimeout(resolve, 10));
}
