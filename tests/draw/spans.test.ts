// Tests of src/draw/spans.ts: which trays are one bar, and how long a place is kept.
import { describe, expect, test } from 'vitest';
import { kindsOf } from '../../src/draw/kinds.ts';
import { chainOf } from '../../src/draw/names.ts';
import { joinRuns, spansOf } from '../../src/draw/spans.ts';
import type { Plan } from '../../src/model/plan.ts';
import { smallPlan } from './smallPlan.ts';

function spansIn(plan: Plan, step: string) {
  const tasks = plan.tasks.filter((task) => task.step === step);
  return spansOf(plan, kindsOf(plan), chainOf(plan), tasks);
}

const deck = (position: number) => ({ kind: 'deck' as const, id: 'oven/top', position });
const shelf = { kind: 'shelf' as const, id: 'proofer', position: 1 };

describe('spansOf', () => {
  const bake = (tray: string, product: string, position: number, end = 140) => ({
    step: 'bake' as const,
    product,
    tray,
    start: 100,
    end,
    place: deck(position),
  });

  test('trays of one product side by side with the same times are one bar', () => {
    const spans = spansIn(smallPlan([bake('tin-1', 'tin', 1), bake('tin-2', 'tin', 2)]), 'bake');
    expect(spans.map(({ trays, position, positions }) => [trays, position, positions])).toEqual([[2, 1, 2]]);
  });

  test('another product, another end or a gap keeps them apart', () => {
    expect(spansIn(smallPlan([bake('tin-1', 'tin', 1), bake('roll-1', 'roll', 2)]), 'bake')).toHaveLength(2);
    expect(spansIn(smallPlan([bake('tin-1', 'tin', 1), bake('tin-2', 'tin', 2, 141)]), 'bake')).toHaveLength(2);
    expect(spansIn(smallPlan([bake('tin-1', 'tin', 1), bake('tin-2', 'tin', 3)]), 'bake')).toHaveLength(2);
  });

  test('trays in no counted place are one bar, batches never', () => {
    const shape = (tray: string) => ({ step: 'shape' as const, product: 'tin', tray, start: 10, end: 20 });
    expect(spansIn(smallPlan([shape('tin-1'), shape('tin-2'), shape('tin-3')]), 'shape').map(({ trays }) => trays)).toEqual([3]);
    const batches = ['wheat-1', 'wheat-2'].map((id) => ({ id, dough: 'wheat', kg: 4, trays: [] }));
    const mix = (batch: string) => ({ step: 'mix' as const, batch, start: 10, end: 20 });
    expect(spansIn(smallPlan([mix('wheat-1'), mix('wheat-2')], { batches }), 'mix')).toHaveLength(2);
  });

  test('a tray keeps its shelf until loading begins', () => {
    const proof = { step: 'proof' as const, product: 'tin', tray: 'tin-1', start: 10, end: 90, place: shelf };
    const loaded = { ...bake('tin-1', 'tin', 1), handsOn: [{ person: 'rosa', start: 98, end: 100, for: 'load' as const }] };
    expect(spansIn(smallPlan([proof, loaded]), 'proof')[0]?.heldUntil).toBe(98);
    expect(spansIn(smallPlan([proof, bake('tin-1', 'tin', 1)]), 'proof')[0]?.heldUntil).toBe(100);
  });

  test('where nobody is named the plan is silent on loading, and the shelf is free as the step ends', () => {
    const proof = { step: 'proof' as const, product: 'tin', tray: 'tin-1', start: 10, end: 98, place: shelf };
    const plan = smallPlan([proof, bake('tin-1', 'tin', 1)]);
    expect(spansIn({ ...plan, bakehouse: { ...plan.bakehouse, people: [] } }, 'proof')[0]?.heldUntil).toBe(98);
  });
});

test('joinRuns: trays one after the other in one place are one bar that counts them', () => {
  const shape = (tray: string, start: number, position: number) => ({
    step: 'shape' as const,
    product: 'tin',
    tray,
    start,
    end: start + 10,
    place: { kind: 'bench' as const, id: 'bench', position },
  });
  const plan = smallPlan([shape('tin-1', 0, 1), shape('tin-2', 10, 1), shape('tin-3', 25, 1), shape('tin-4', 10, 2)]);
  const runs = joinRuns(spansIn(plan, 'shape'));
  expect(runs.map(({ position, start, end, trays }) => [position, start, end, trays])).toEqual([
    [1, 0, 20, 2],
    [1, 25, 35, 1],
    [2, 10, 20, 1],
  ]);
});
