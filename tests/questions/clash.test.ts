// A clash on days on which it is known; every member tried again here by planning; what is not proved is said.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../src/model/scenario.ts';
import { type Clash, clashSchema } from '../../src/model/why.ts';
import type { Asking } from '../../src/questions/asking.ts';
import { type Candidate, candidatesOf, dayOf } from '../../src/questions/clash/dayOf.ts';
import { limitsOf } from '../../src/questions/clash/limitsOf.ts';
import { clashOf } from '../../src/questions/clash.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import { anyScenario } from '../laws/anyScenario.ts';
import { planned } from '../laws/planned.ts';
import { PLANTED } from './clashDays.ts';

const asking: Asking = {
  seed: 1,
  workers: 1,
  now: () => 0,
  untilMs: Number.POSITIVE_INFINITY,
  cancelled: () => false,
  pause: async () => {},
  version: 'test',
};

const ON_TIME = { lateTrayMinute: 1, leftOutTray: 5000, finishMinute: 0, temperatureChange: 0, aim: 'finish-early' } as const;

const nameOf = (one: Candidate): string => (one.is === 'order' ? `order ${one.number}` : `${one.limit.kind} ${one.limit.of}`);

function namesIn(clash: Clash): string[] {
  if (clash.is !== 'found') return [];
  return clash.members.map((one) => (one.is === 'order' ? `order ${one.number}` : `${one.limit} ${one.of}`));
}

/** The day with the named orders and limits alone, planned with another seed; the judge is asked by `planned`. */
async function priceOf(scenario: Scenario, names: readonly string[]): Promise<{ cost: number; lowerBound: number } | null> {
  const all = candidatesOf(scenario, limitsOf(scenario));
  const day = dayOf(scenario, all, new Set(all.filter((one) => names.includes(nameOf(one)))));
  if (day === null) return null;
  return (await planned({ ...day, goals: ON_TIME }, 2500, 7)).score;
}

describe('a clash', () => {
  it.each(PLANTED)('is the one planted: $name', async ({ scenario, planted }) => {
    const clash = clashSchema.parse(await clashOf(scenario, asking, { effort: 20_000 }));
    expect([...namesIn(clash)].sort()).toEqual([...planted].sort());
    expect(clash).toMatchObject({ is: 'found', isMinimal: true, notProved: [] });
    expect((await priceOf(scenario, planted))?.lowerBound).toBeGreaterThan(0);
    for (const member of planted) {
      const rest = await priceOf(
        scenario,
        planted.filter((one) => one !== member),
      );
      expect(rest?.cost ?? 0, `without ${member}`).toBe(0);
    }
  });

  it('is none on a day that works out', async () => {
    const { scenario } = PLANTED[0] as (typeof PLANTED)[number];
    const easy = { ...scenario, orders: scenario.orders.slice(1) };
    expect(await clashOf(easy, asking, { effort: 400 })).toMatchObject({ is: 'none', solves: 1 });
  });

  it('says what it has not proved when there is no effort left', async () => {
    const { scenario } = PLANTED[4] as (typeof PLANTED)[number];
    const clash = await clashOf(scenario, asking, { effort: 25 });
    if (clash.is === 'found') expect(clash.notProved.length > 0).toBe(!clash.isMinimal);
    else expect(clash.is).toBe('unknown');
    const over = await clashOf(scenario, { ...asking, cancelled: () => true }, { effort: 400 });
    expect(over.is).toBe('unknown');
  });

  it('claims nothing that planning again does not show', async () => {
    await fc.assert(
      fc.asyncProperty(anyScenario, async (drawn) => {
        const scenario = { ...drawn, orders: drawn.orders.slice(0, 2) };
        const clash = await clashOf(scenario, asking, { effort: 300 });
        if (clash.is !== 'found') return;
        const whole = await priceOf(scenario, namesIn(clash));
        expect(whole?.cost).toBeGreaterThan(0);
        for (const [at, member] of clash.members.entries()) {
          if (member.withoutIt !== 'possible') continue;
          const rest = await priceOf(
            scenario,
            namesIn(clash).filter((_, index) => index !== at),
          );
          expect(rest?.lowerBound ?? 0).toBe(0);
        }
      }),
      { numRuns: 6 },
    );
  });
});

describe('a lifted limit', () => {
  it('is a scenario that can be read', () => {
    fc.assert(
      fc.property(anyScenario, (scenario) => {
        for (const limit of limitsOf(scenario)) expect(readScenarioValue(limit.lift(scenario))).toMatchObject({ ok: true });
        const all = limitsOf(scenario).reduce((day, limit) => limit.lift(day), scenario);
        expect(readScenarioValue(all)).toMatchObject({ ok: true });
      }),
      { numRuns: 30 },
    );
  });

  it('never raises the optimum', async () => {
    const tiny = anyScenario.map((scenario) => ({
      ...scenario,
      goals: ON_TIME,
      orders: scenario.orders.slice(0, 2).map((order) => ({ ...order, pieces: Math.min(order.pieces, 10) })),
    }));
    await fc.assert(
      fc.asyncProperty(tiny, fc.nat(), async (scenario, pick) => {
        const limits = limitsOf(scenario);
        const limit = limits[pick % limits.length];
        if (limit === undefined) return;
        const before = await planned(scenario, 60);
        const after = await planned(limit.lift(scenario), 60, 1, { startFrom: before });
        expect(after.score.lowerBound, `${limit.kind} ${limit.of}`).toBeLessThanOrEqual(before.score.cost);
        if (after.stopped === 'proved') expect(after.score.cost).toBeLessThanOrEqual(before.score.cost);
      }),
      { numRuns: 25 },
    );
  });
});
