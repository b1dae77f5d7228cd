// How long a plan of 30 trays takes over HTTP, beside the same by a call of the library, by turns in one run. Used by run/service.ts.
import type { Scenario } from '../../src/model/scenario.ts';
import { makePlan } from '../../src/planning.ts';
import { percentile } from './sampling.ts';

export type FirstPlan = { readonly effort: number; readonly overHttpMs: readonly number[]; readonly byCallMs: readonly number[] };

const now = (): number => performance.now();

async function overHttp(url: string, body: string, effort: number): Promise<number> {
  const began = now();
  // A connection of its own: the call by turns may take longer than a connection is kept.
  const headers = { Connection: 'close', 'Content-Type': 'application/json', Prefer: 'wait=1' };
  const answer = await fetch(`${url}/v1/plans?effort=${effort}&seed=1`, { method: 'POST', headers, body });
  const work: unknown = await answer.json();
  const ms = now() - began;
  if (answer.status === 200 && typeof work === 'object' && work !== null && 'state' in work && work.state === 'done') return ms;
  // Not ready within the wait it preferred: it counts as that, not as a plan.
  return answer.status === 202 ? Number.POSITIVE_INFINITY : Promise.reject(new Error(`${answer.status} instead of a plan`));
}

async function byCall(scenario: Scenario, effort: number): Promise<number> {
  const began = now();
  JSON.stringify(await makePlan(scenario, { now, effort, seed: 1, version: 'benchmark' }));
  return now() - began;
}

export async function firstPlans(url: string, scenario: Scenario, effort: number, rounds: number): Promise<FirstPlan> {
  const body = JSON.stringify(scenario);
  const [overHttpMs, byCallMs]: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round++) {
    overHttpMs.push(await overHttp(url, body, effort));
    byCallMs.push(await byCall(scenario, effort));
  }
  return { effort, overHttpMs, byCallMs };
}

export function median(samples: readonly number[]): number {
  return percentile(samples, 0.5);
}
