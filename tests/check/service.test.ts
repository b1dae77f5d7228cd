// Who serves whom, and what is late: orders that share trays, trays left out, orders of one time. Worked out on paper.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';

/** Rolls of 10 on a tray that only need to be shaped, so that a tray is ready when its shaping ends. */
function scenarioOf(orders: readonly { readonly pieces: number; readonly readyBy: string }[], goals = {}) {
  return scenarioSchema.parse({
    scenario: 1,
    name: 'Rolls',
    date: '2026-01-20',
    timeZone: 'UTC',
    day: { from: '00:00', until: '04:00' },
    equipment: {},
    doughs: [{ id: 'dough', shapeWithin: 240, steps: [{ do: 'bulk', minutes: 0 }] }],
    products: [{ id: 'roll', dough: 'dough', pieceG: 50, piecesPerTray: 10, steps: [{ do: 'shape', minutesPerTray: 5 }] }],
    orders: orders.map((order) => ({ product: 'roll', ...order })),
    goals,
  });
}

/** One batch; trays ready at the given minutes. */
function planOf(ready: readonly number[]): WrittenPlan {
  const first = Math.min(...ready) - 5;
  return {
    tasks: [
      { step: 'bulk', batch: 'dough-1', start: first, end: first, handsOn: [] },
      ...ready.map((end, index) => ({
        step: 'shape' as const,
        product: 'roll',
        batch: 'dough-1',
        tray: `tray ${index}`,
        start: end - 5,
        end,
        handsOn: [],
      })),
    ],
    decks: [],
  };
}

function figuresOf(orders: Parameters<typeof scenarioOf>[0], ready: readonly number[], goals = {}) {
  const { breaches, figures } = judge(scenarioOf(orders, goals), planOf(ready));
  expect(breaches).toEqual([]);
  return figures;
}

describe('trays serve orders', () => {
  it('gives the earliest orders the first trays, however both are listed', () => {
    const orders = [
      { pieces: 10, readyBy: '02:00' },
      { pieces: 10, readyBy: '01:00' },
    ];
    // Ready at 70 and 130: the order of 01:00 is 10 late, that of 02:00 is 10 late.
    const { lateTrayMinutes, orders: served } = figuresOf(orders, [130, 70]);
    expect(lateTrayMinutes).toBe(20);
    expect(served.map(({ readyAt, lateMinutes }) => [readyAt, lateMinutes])).toEqual([
      ['2026-01-20T02:10:00+00:00', 10],
      ['2026-01-20T01:10:00+00:00', 10],
    ]);
  });

  it('makes a tray that serves two orders due at the earlier', () => {
    const orders = [
      { pieces: 4, readyBy: '01:00' },
      { pieces: 9, readyBy: '02:00' },
    ];
    // Two trays: pieces 1-10 serve both orders and are due at 60, pieces 11-13 the second and are due at 120.
    const { lateTrayMinutes, orders: served } = figuresOf(orders, [65, 122]);
    expect(lateTrayMinutes).toBe(5 + 2);
    expect(served.map(({ lateMinutes }) => lateMinutes)).toEqual([5, 2]);
  });

  it('takes orders of one time as listed', () => {
    const orders = [
      { pieces: 15, readyBy: '01:00' },
      { pieces: 5, readyBy: '01:00' },
    ];
    const { orders: served } = figuresOf(orders, [50, 80]);
    expect(served.map(({ lateMinutes }) => lateMinutes)).toEqual([20, 20]);
    const { orders: turned } = figuresOf([...orders].reverse(), [50, 80]);
    expect(turned.map(({ lateMinutes }) => lateMinutes)).toEqual([0, 20]);
  });

  it('leaves the latest orders without when trays are left out', () => {
    const orders = [
      { pieces: 10, readyBy: '01:00' },
      { pieces: 11, readyBy: '02:00' },
    ];
    // 21 pieces are three trays; two are planned. The second order misses its last piece.
    const figures = figuresOf(orders, [60, 120]);
    expect(figures).toMatchObject({ leftOutTrays: 1, lateTrayMinutes: 0, finishMinute: 120, cost: 5000 + 120 });
    expect(figures.orders.map(({ readyAt, lateMinutes }) => [readyAt, lateMinutes])).toEqual([
      ['2026-01-20T01:00:00+00:00', 0],
      [null, null],
    ]);
  });

  it('prices with the goals of the scenario', () => {
    const orders = [{ pieces: 10, readyBy: '01:00' }];
    const goals = { lateTrayMinute: 0.1, leftOutTray: 7, finishMinute: 0.5 };
    // 3 late at 0.1 and 63 at 0.5.
    expect(figuresOf(orders, [63], goals).cost).toBe(31.8);
    // start-late: the makespan counts from the shaping at 58.
    expect(figuresOf(orders, [63], { ...goals, aim: 'start-late' })).toMatchObject({ cost: 2.8, firstHandsOnMinute: 58 });
  });

  it('prices a plan of nothing by what it leaves out', () => {
    const { breaches, figures } = judge(scenarioOf([{ pieces: 25, readyBy: '01:00' }]), { tasks: [], decks: [] });
    expect(breaches).toEqual([]);
    expect(figures).toMatchObject({ cost: 15000, leftOutTrays: 3, finishMinute: 0, firstHandsOnMinute: 0 });
  });
});
