// The plan so far, at every report of a search: judged, of the price that is reported, and the search goes on as if nobody had asked.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { makePlan, type Progress } from '../../src/planning.ts';
import { readScenario } from '../../src/read/readScenario.ts';
import { scenarioFrom } from './anyScenario.ts';

const FOLDER = new URL('../../scenarios/', import.meta.url);
const EFFORT = 40;
/** One person, a rack oven, a night with a clock change, trays left out. */
const NAMES = ['more-than-the-oven-takes', 'night-the-clocks-go-forward', 'one-pair-of-hands', 'rack-oven'];

function written(): readonly { readonly name: string; readonly scenario: Scenario }[] {
  return NAMES.map((name) => {
    const reading = readScenario(readFileSync(new URL(`${name}.yaml`, FOLDER), 'utf8'));
    if (!reading.ok) throw new Error(`${name} cannot be read`);
    return { name, scenario: reading.value };
  });
}

function search(scenario: Scenario, onProgress?: (progress: Progress, soFar: () => Plan) => void): Promise<Plan> {
  return makePlan(scenario, {
    effort: EFFORT,
    now: () => 0,
    version: 'test',
    ...(onProgress === undefined ? {} : { onProgress }),
  });
}

async function check(scenario: Scenario): Promise<number> {
  let asked = 0;
  const watched = await search(scenario, ({ cost, trays, plannedTrays }, planSoFar) => {
    const plan = planSoFar();
    asked++;
    expect(judge(scenario, plan).breaches).toEqual([]);
    expect(plan.score.cost).toBeCloseTo(cost, 6);
    expect(plan.score.leftOutTrays).toBe(trays - plannedTrays);
    expect(plan.score.lowerBound).toBeLessThanOrEqual(plan.score.cost);
  });
  expect(watched).toEqual(await search(scenario));
  return asked;
}

describe('the plan so far', () => {
  it.each(written())(
    '$name',
    async ({ scenario }) => {
      expect(await check(scenario)).toBeGreaterThan(0);
    },
    120_000,
  );

  it('on 8 days drawn at random', async () => {
    let asked = 0;
    for (let seed = 1; seed <= 8; seed++) asked += await check(scenarioFrom(seed));
    expect(asked).toBeGreaterThan(8);
  }, 120_000);
});
