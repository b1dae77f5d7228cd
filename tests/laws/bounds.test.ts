// No bound is above the cost of a plan the judge approves, whoever made it: also plans that were sought for another end, on
// harder days of which the search knew nothing when it proved the bound.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../src/model/scenario.ts';
import { anyScenario, scenarioFrom } from './anyScenario.ts';
import { HARDER, judgedOn } from './harderDays.ts';
import { planned } from './planned.ts';

const longer = 240_000;

type Changes = readonly (typeof HARDER)[number][];

/** The bound of the day after some effort, held against plans of harder days; and the argument behind it. */
async function boundHolds(day: Scenario, effort: number, harder: readonly Changes[]): Promise<string> {
  const { score, bound } = await planned(day, effort);
  for (const changes of harder) {
    const plan = await planned(
      changes.reduce((scenario, change) => change.apply(scenario), day),
      15,
    );
    const { breaches, cost } = judgedOn(day, plan);
    expect(breaches).toEqual([]);
    expect(score.lowerBound).toBeLessThanOrEqual(cost + 1e-6);
  }
  return bound.argument;
}

describe('a bound holds for plans of harder days', () => {
  it(
    'on days drawn at random',
    async () => {
      const someChanges = fc.uniqueArray(fc.constantFrom(...HARDER), { minLength: 1, maxLength: 3 });
      await fc.assert(
        fc.asyncProperty(anyScenario, someChanges, someChanges, async (day, some, others) => {
          await boundHolds(day, 60, [some, others]);
        }),
        { numRuns: 15 },
      );
    },
    longer,
  );

  it(
    'on days on which the search itself has proved it',
    async () => {
      const proved: string[] = [];
      for (const seed of [10, 11, 14, 18, 24]) {
        const each = HARDER.map((change) => [change]);
        proved.push(await boundHolds(scenarioFrom(seed), 100, each));
      }
      expect(proved.filter((argument) => argument.startsWith('search')).length).toBeGreaterThanOrEqual(3);
    },
    longer,
  );
});
