// A plan of another version of a day is a start: what still stands is kept, and a day made easier never costs more than before.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { anyScenario } from './anyScenario.ts';
import { HARDER } from './harderDays.ts';
import { planned } from './planned.ts';

const IN_PART = /^Not all of the plan to start from stands/;
const isInPart = (plan: Plan): boolean => plan.solver.notes.some((note) => IN_PART.test(note));

/** What is the same in both: when each step of each tray begins. */
function sharedStarts(a: Plan, b: Plan): number {
  const startOf = new Map(a.tasks.map((task) => [`${task.id} ${task.start}`, task.start]));
  return b.tasks.filter((task) => startOf.has(`${task.id} ${task.start}`)).length;
}

/** One more order of the first product, a tray of it, at the end of the day. */
function withOneMore(scenario: Scenario): Scenario {
  const [first] = scenario.orders;
  const product = scenario.products.find(({ id }) => id === first?.product);
  if (first === undefined || product === undefined) return scenario;
  const latest = scenario.day.until;
  return { ...scenario, orders: [...scenario.orders, { product: product.id, pieces: product.piecesPerTray, readyBy: latest }] };
}

describe('a plan of another version as a start', () => {
  it('of an easier day: the harder one still gets a sound plan', { timeout: 120_000 }, async () => {
    const inPart: boolean[] = [];
    await fc.assert(
      fc.asyncProperty(anyScenario, fc.constantFrom(...HARDER), async (scenario, { apply }) => {
        const before = await planned(scenario, 20);
        inPart.push(isInPart(await planned(apply(scenario), 5, 1, { startFrom: before })));
      }),
      { numRuns: 15 },
    );
    // Some of the harder days leave all of the plan standing, some do not.
    expect(inPart.filter(Boolean).length).toBeGreaterThan(0);
    expect(inPart.filter((one) => !one).length).toBeGreaterThan(0);
  });

  it('of a harder day: the easier one, where all of it stands, costs no more', { timeout: 120_000 }, async () => {
    let whole = 0;
    await fc.assert(
      fc.asyncProperty(anyScenario, fc.constantFrom(...HARDER), async (scenario, { apply }) => {
        const before = await planned(apply(scenario), 20);
        const after = await planned(scenario, 5, 1, { startFrom: before });
        if (isInPart(after)) return;
        whole++;
        expect(after.score.cost).toBeLessThanOrEqual(before.score.cost + 1e-6);
      }),
      { numRuns: 15 },
    );
    expect(whole).toBeGreaterThan(7);
  });

  it('of a day with a tray less: the others are still there, and most stay where they were', { timeout: 120_000 }, async () => {
    const shares: number[] = [];
    await fc.assert(
      fc.asyncProperty(anyScenario, async (scenario) => {
        const before = await planned(scenario, 30);
        if (before.score.leftOutTrays > 0 || before.tasks.length === 0) return;
        const after = await planned(withOneMore(scenario), 1, 1, { startFrom: before });
        shares.push(sharedStarts(before, after) / before.tasks.length);
      }),
      { numRuns: 15 },
    );
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    expect(shares.length).toBeGreaterThan(0);
    expect(mean).toBeGreaterThan(0.3);
  });
});
