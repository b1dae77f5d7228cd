// The answer on days made for one thing each: what hurts most, trays at risk, trays left out, breaks, hours, time limits.
import { describe, expect, test } from 'vitest';
import { type ScenarioInput, scenarioSchema } from '../../../src/model/scenario.ts';
import { howSure, USUAL_MORNINGS } from '../../../src/questions/howSure/howSure.ts';
import { planned } from '../../laws/planned.ts';
import { NO_SPREAD, normalDensity, normalShare, planOfSmallDay, smallDay } from './smallDays.ts';

/** Two breads that share an oven deck of one place: the second waits until the first is out. */
const twoBreads: ScenarioInput = {
  scenario: 1,
  name: 'Two breads, one place',
  date: '2026-05-16',
  timeZone: 'UTC',
  day: { from: '00:00', until: '08:00' },
  equipment: {
    ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', trays: 1, startsAtC: 200 }] }],
    proofers: [{ id: 'proofer', shelves: 4, temperatureC: 30 }],
  },
  doughs: [
    { id: 'quick', steps: [{ do: 'mix', minutes: 10 }] },
    { id: 'slow', steps: [{ do: 'mix', minutes: 10 }] },
  ],
  products: [
    {
      id: 'bun',
      dough: 'quick',
      pieceG: 60,
      piecesPerTray: 12,
      steps: [
        { do: 'proof', minutes: [30, 40], spreadPercent: 2 },
        { do: 'bake', minutes: 20, temperatureC: [195, 205] },
      ],
    },
    {
      id: 'loaf',
      dough: 'slow',
      pieceG: 600,
      piecesPerTray: 4,
      steps: [
        { do: 'proof', minutes: [60, 70], spreadPercent: 30 },
        { do: 'bake', minutes: 30, temperatureC: [195, 205] },
      ],
    },
  ],
  orders: [
    { product: 'bun', pieces: 12, readyBy: '01:15' },
    { product: 'loaf', pieces: 4, readyBy: '01:45' },
  ],
  spread: NO_SPREAD,
};

test('the dough that strays most hurts most, and its tray is the one at risk', async () => {
  const scenario = scenarioSchema.parse(twoBreads);
  const answer = await howSure(scenario, await planned(scenario, 30));
  expect(answer.mornings).toBe(USUAL_MORNINGS);
  expect(answer.hurtsMost).toMatchObject({ step: 'proof', of: 'loaf' });
  expect(answer.hurts).toEqual([{ step: 'proof', lateTrayMinutes: answer.hurtsMost?.lateTrayMinutes }]);
  expect(answer.hurtsMost?.lateTrayMinutes).toBeCloseTo(answer.lateTrayMinutes, 0);
  expect(answer.traysAtRisk.map(({ tray }) => tray)).toEqual(['loaf-1']);
  const [bun, loaf] = answer.orders;
  expect(bun?.onTime.chance).toBe(1);
  expect(loaf?.onTime.chance).toBeLessThan(0.9);
  expect(answer.allOnTime).toEqual(loaf?.onTime);
});

test("what is late because something else was late is that other thing's harm", async () => {
  // The loaf goes first and keeps the only place; the bun, which never strays, is late by it.
  const orders = [
    { product: 'loaf', pieces: 4, readyBy: '04:00' },
    { product: 'bun', pieces: 12, readyBy: '02:01' },
  ];
  const [bun, loaf] = twoBreads.products;
  if (bun === undefined || loaf === undefined) throw new Error('two breads');
  const late = { ...bun, steps: [{ do: 'rest', minutes: 60, spreadPercent: 0 } as const, ...bun.steps] };
  const scenario = scenarioSchema.parse({ ...twoBreads, orders, products: [late, loaf] });
  const plan = await planned(scenario, 30);
  expect(plan.orders.map(({ readyAt }) => readyAt?.slice(11, 16))).toEqual(['01:40', '02:00']);
  const answer = await howSure(scenario, plan);
  expect(answer.traysAtRisk[0]).toMatchObject({ tray: 'bun-1' });
  expect(answer.hurtsMost).toMatchObject({ step: 'proof', of: 'loaf' });
});

test('an order with a tray left out is never on time, and has no minute', async () => {
  const [bun, loaf] = twoBreads.orders;
  if (bun === undefined || loaf === undefined) throw new Error('two orders');
  const goals = { leftOutTray: 1, lateTrayMinute: 100 };
  const scenario = scenarioSchema.parse({ ...twoBreads, orders: [bun, { ...loaf, readyBy: '00:30' }], goals });
  const plan = await planned(scenario, 30);
  expect(plan.leftOut.map(({ product }) => product)).toContain('loaf');
  const answer = await howSure(scenario, plan, { mornings: 100 });
  expect(answer.orders[1]).toMatchObject({ plannedReadyAt: null, usuallyReadyAt: null, mostlyReadyAt: null });
  expect([answer.orders[1]?.onTime.chance, answer.allOnTime.chance]).toEqual([0, 0]);
});

describe('people', () => {
  const atWork = {
    batchSteps: [{ do: 'bulk', minutes: [10, 600] }],
    steps: [{ do: 'shape', minutesPerTray: 60 }],
    trays: 2,
    readyBy: '03:00',
    spread: { shape: 10 },
  } as const;
  const day = (people: ScenarioInput['people']) =>
    smallDay({ ...atWork, batchSteps: [{ do: 'bulk', minutes: [10, 600] }], steps: [...atWork.steps], people });

  test('a break keeps its length when the work before it takes longer', async () => {
    // Shaping 0:10 to 1:10, a break of 20 minutes, shaping 1:30 to 2:30; each minute beyond the first hour moves all that follows.
    const scenario = day([{ id: 'ana', from: '00:00', until: '02:40', breaks: [{ from: '01:10', until: '01:30' }] }]);
    const plan = await planOfSmallDay(scenario);
    const answer = await howSure(scenario, plan);
    expect(plan.orders[0]?.readyAt?.slice(11, 16)).toBe('02:30');
    // Nobody runs ahead: done at 2:30 + max(0, 6 z) + 6 z', z and z' normal. Beyond 2:40, the end of the hours, is what z' alone
    // brings for z below 0, and an integral over z above 0, by the midpoint rule.
    let expected = 0.5 * (1 - normalShare(10 / 6));
    const step = 0.001;
    for (let z = step / 2; z < 8; z += step) expected += normalDensity(z) * step * (1 - normalShare(10 / 6 - z));
    const [works] = answer.pastHours;
    expect(works?.person).toBe('ana');
    expect(Math.abs((works?.works.chance ?? 0) - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / 10_000));
  });

  test('nobody is told of who is hardly ever at work after hours', async () => {
    const scenario = day([{ id: 'ana', from: '00:00', until: '06:00' }]);
    expect((await howSure(scenario, await planOfSmallDay(scenario))).pastHours).toEqual([]);
  });
});

test('when time is over, what was counted by then is told, and how many mornings that were', async () => {
  const scenario = scenarioSchema.parse(twoBreads);
  const answer = await howSure(scenario, await planned(scenario, 30), { isOver: () => true });
  expect(answer.mornings).toBeGreaterThanOrEqual(500);
  expect(answer.mornings).toBeLessThan(USUAL_MORNINGS);
  expect(answer.allOnTime.high - answer.allOnTime.low).toBeGreaterThan(0.02);
});
