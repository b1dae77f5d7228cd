import { describe, expect, it } from 'vitest';
import { makePlan } from '../../src/planning.ts';
import { scenarioNamed, scenarioNames, scenariosReadme } from './allScenarios.ts';

/** Rounds of search, the same on every machine: the tight morning needs more, the large one is in hand at once. */
const effortFor = (name: string): number => ({ 'two-hands-and-leaven': 1500, 'central-bakery': 30 })[name] ?? 300;

/** What the list says of each scenario: whether everything can be ready on time. */
const saysOnTime = new Map(
  [...scenariosReadme.matchAll(/^\| \[([\w-]+)\].*\| (yes|no) \|$/gm)].map(([, name = '', answer]) => [name, answer === 'yes']),
);

describe('scenarios/README.md', () => {
  it('lists every scenario', () => {
    expect([...saysOnTime.keys()].sort()).toEqual(scenarioNames);
  });

  // makePlan throws when the judge finds a breach, so a plan in hand is a plan that works out.
  it.each([...saysOnTime])('%s can be ready on time: %s', { timeout: 120_000 }, async (name, isOnTime) => {
    const { score } = await makePlan(scenarioNamed(name), { seed: 1, effort: effortFor(name), now: () => 0, version: 'test' });
    if (isOnTime) expect(score).toMatchObject({ lateTrayMinutes: 0, leftOutTrays: 0 });
    // The file works out that twelve trays are the most the deck can bake.
    else expect(score.leftOutTrays).toBeGreaterThanOrEqual(4);
  });
});
