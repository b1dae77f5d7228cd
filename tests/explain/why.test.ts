// Why trays are late or left out: on days worked out by hand, and what is said counted again on days drawn at random.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgedDayOf } from '../../src/check/judgedDay.ts';
import { readyMinute } from '../../src/check/service.ts';
import { trayAgain } from '../../src/explain/why/tryAgain.ts';
import { whyOf } from '../../src/explain/why.ts';
import type { Plan } from '../../src/model/plan.ts';
import { type Scenario, scenarioSchema } from '../../src/model/scenario.ts';
import { type Why, whySchema } from '../../src/model/why.ts';
import { anyScenario } from '../laws/anyScenario.ts';
import { planned } from '../laws/planned.ts';
import { PLANTED } from '../questions/clashDays.ts';
import { recounted } from './usesRecounted.ts';

const dayCalled = (part: string): Scenario => {
  const found = PLANTED.find(({ name }) => name.includes(part));
  if (found === undefined) throw new Error(`no day is called ${part}`);
  return found.scenario;
};

async function whyOn(scenario: Scenario, effort = 100): Promise<Why> {
  return whySchema.parse(whyOf(scenario, await planned(scenario, effort)));
}

/** The plan without the tasks of some trays and batches. */
function without(plan: Plan, ids: readonly string[]): Plan {
  const isOut = ({ tray, batch }: Plan['tasks'][number]): boolean => ids.includes(tray ?? batch);
  return { ...plan, tasks: plan.tasks.filter((task) => !isOut(task)) };
}

describe('a late tray', () => {
  it('that finds no shelf: which shelves, when, how many minutes short, what it waited for', async () => {
    const day = dayCalled('shelves');
    const products = day.products.map((product) => ({ ...product, steps: day.products[0]?.steps ?? [] }));
    const orders = day.orders.map((order, index) => ({ ...order, pieces: index === 0 ? 20 : 10, readyBy: '05:00' }));
    const { trays } = await whyOn({ ...day, products, orders });
    expect(trays).toHaveLength(1);
    const [tray] = trays;
    // Two of three on the shelves 03:10 to 04:10; proof 60 and bake 10 before 05:00 make 03:50 the latest begin.
    expect(tray?.says).toBe(
      'roll (roll-1) is ready at 05:20, 20 min after its time of 05:00. With the rest of the plan as it stands its proof could begin nowhere from 03:10 to 03:50, as it would have to for 05:00.',
    );
    expect(tray?.tried.map(({ rule, shortMinutes, says }) => ({ rule, shortMinutes, says }))).toEqual([
      {
        rule: 'SHELF_CAPACITY',
        shortMinutes: 20,
        says: 'The shelves of the proofer are full 03:10 to 04:10 (two of two). As far as this goes it could begin at 04:10: 20 min short.',
      },
    ]);
    expect(tray?.waits.map(({ says }) => says)).toEqual([
      'The bake of roll-1 could not be done a minute sooner, for the proof of roll-1 could not begin sooner: the shelves of the proofer are full 03:10 to 04:10 (two of two).',
      'The bake of bun-1 could not be done sooner: from the start of the day (03:00) its own steps take 1 h 20 min.',
    ]);
  });

  it('or left out, that finds no hands: person by person', async () => {
    const { trays } = await whyOn(dayCalled('hands'));
    expect(
      trays.map(({ stuckAt, tried }) => ({ stuckAt, tried: tried.map(({ kind, id, rule }) => ({ kind, id, rule })) })),
    ).toEqual([{ stuckAt: 'shape', tried: [{ kind: 'person', id: 'ana', rule: 'PERSON_BUSY' }] }]);
    expect(trays[0]?.tried[0]?.says).toMatch(/^Ana is at work on the shape of bun-\d/);
  });

  it('before a deck too hot or too cold: what it is at, what the tray wants, how many minutes short', async () => {
    const { trays } = await whyOn(dayCalled('heat'));
    const tried = trays.flatMap((tray) => tray.tried);
    expect(tried.map(({ rule }) => rule)).toEqual(['DECK_TEMPERATURE']);
    expect(tried[0]?.says).toMatch(
      /between the bakes that stand there the deck is at [\d.]+ C at the (least|most); the tray wants (180|240) C\./,
    );
    expect(tried[0]?.shortMinutes).toBeGreaterThan(0);
  });

  it('whose person comes too late: their hours', async () => {
    const { trays } = await whyOn(dayCalled('hours'));
    expect(trays[0]?.tried[0]?.says).toContain(
      'Ben is not there at 04:55, only from 05:00. As far as this goes it could begin at 05:00: 5 min short.',
    );
  });

  it('whose own steps take too long', async () => {
    const day = dayCalled('shelves');
    const { trays } = await whyOn({ ...day, orders: day.orders.map((order) => ({ ...order, pieces: 10, readyBy: '03:30' })) });
    expect(trays[0]?.says).toContain('Its own steps take 1 h 20 min one after another');
  });
});

describe('a tray left out', () => {
  it('is tried as one more tray by the end of the day', async () => {
    const { trays, isOnTime } = await whyOn(dayCalled('end of the day'));
    expect(isOnTime).toBe(false);
    expect(trays.map(({ is, trays: count, tried }) => ({ is, count, rules: tried.map(({ rule }) => rule) }))).toEqual([
      { is: 'left-out', count: 1, rules: ['DECK_CAPACITY'] },
    ]);
    expect(trays[0]?.tried[0]?.says).toMatch(/^The deck is taken 03:10 to 04:00 \(the bake of bun-1\)/);
  });
});

describe('on any day', () => {
  it('what is said to be full is full without the tray, and free from the minute said', { timeout: 120_000 }, async () => {
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(anyScenario, async (drawn) => {
        const scenario = scenarioSchema.parse({
          ...drawn,
          orders: drawn.orders.map((order) => ({ ...order, readyBy: '05:40' })),
        });
        const plan = await planned(scenario, 3);
        for (const tray of whySchema.parse(whyOf(scenario, plan)).trays) {
          const rest = without(plan, tray.takenOut);
          for (const { kind, id, full, rule, isAlone, firstMinute } of tray.tried) {
            // Where any of several people could do it, the one or the other is at work.
            const each = (kind === 'person' ? id.split(', ') : [id]).map((one) => recounted(scenario, rest, kind, one));
            const held = each[0] as number[];
            const room = kind === 'person' ? 1 : roomOf(plan, kind, id);
            for (const { start, end } of full) {
              const isFull = each.some((counts) => end > start && counts.slice(start, end).every((count) => count === room));
              expect(isFull, `${kind} ${id} from ${start} until ${end}`).toBe(true);
              seen++;
            }
            const isRoom = rule.endsWith('_CAPACITY') && isAlone && firstMinute !== null && kind !== 'deck';
            if (isRoom) expect(held[firstMinute]).toBeLessThan(room);
            for (const span of tray.arrivals) expect(span.end).toBeLessThanOrEqual(tray.byMinute + 1);
          }
        }
      }),
      { numRuns: 20 },
    );
    expect(seen).toBeGreaterThan(10);
  });

  it('a tray finds its own place again: nothing is in its way that is not there', async () => {
    await fc.assert(
      fc.asyncProperty(anyScenario, async (scenario) => {
        const plan = await planned(scenario, 3);
        const day = judgedDayOf(scenario, plan);
        for (const tray of day.trays) {
          const { walk } = trayAgain(day, tray, tray.runs.length, readyMinute(tray));
          expect(walk.is, tray.id).toBe('through');
          if (walk.is === 'through') expect(walk.done).toBeLessThanOrEqual(readyMinute(tray));
        }
      }),
      { numRuns: 8 },
    );
  });
});

function roomOf({ bakehouse }: Plan, kind: string, id: string): number {
  if (kind === 'bowl') return 1;
  if (kind === 'bench') return bakehouse.benchPlaces ?? 0;
  if (kind === 'rack') return bakehouse.coolingRackTrays ?? 0;
  if (kind === 'deck') return bakehouse.decks.find((deck) => deck.id === id)?.trays ?? 0;
  return [...bakehouse.proofers, ...bakehouse.retarders].find((one) => one.id === id)?.places ?? 0;
}
