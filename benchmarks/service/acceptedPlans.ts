// Fetches every plan that was accepted, waits for those still being made, and has each judged. Used by run/service.ts.
import { judge } from '../../src/check/judge.ts';
import { planSchema } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';

export type Accepted = { readonly location: string; readonly scenario: Scenario };

/** Longest wait for one of them. */
const WITHIN_MS = 120_000;

async function planAt(url: string): Promise<unknown> {
  const began = performance.now();
  while (performance.now() - began < WITHIN_MS) {
    const answer = await fetch(url, { headers: { Accept: 'application/json' } });
    const work: unknown = await answer.json();
    if (answer.status !== 200 || typeof work !== 'object' || work === null || !('state' in work))
      throw new Error(`${answer.status} at ${url}`);
    if (work.state === 'done' && 'answer' in work) return work.answer;
    if (work.state !== 'waiting' && work.state !== 'running') throw new Error(`${url} is ${String(work.state)}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`no plan within ${WITHIN_MS / 1000} s at ${url}`);
}

/** What is wrong with the accepted plans; empty when every one is there and keeps every rule. */
export async function wrongPlans(base: string, accepted: readonly Accepted[]): Promise<readonly string[]> {
  const wrong: string[] = [];
  for (const { location, scenario } of accepted) {
    const plan = planSchema.parse(await planAt(new URL(location, base).href));
    const { breaches, figures } = judge(scenario, plan);
    wrong.push(...breaches.map(({ rule, says }) => `${location}: ${rule} ${says}`));
    if (figures.cost !== plan.score.cost) wrong.push(`${location}: the price is ${figures.cost}, not ${plan.score.cost}`);
  }
  return wrong;
}
