// A plan read back as a start, when the trays it still has fit our batches in one way only.
import { expect, it } from 'vitest';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { startLayout } from '../../src/compile/startLayout.ts';
import type { Plan } from '../../src/model/plan.ts';
import { planned } from '../laws/planned.ts';
import { bakery } from './bakery.ts';

/** The plan without all but these trays of each batch. */
function keeping(plan: Plan, kept: ReadonlyMap<string, readonly string[]>): Plan {
  const batches = plan.batches.map((batch) => {
    const left = [...(kept.get(batch.id) ?? [])];
    const trays = batch.trays.filter(({ product }) => left.includes(product) && left.splice(left.indexOf(product), 1).length > 0);
    return { ...batch, trays };
  });
  const ids = new Set(batches.flatMap(({ trays }) => trays.map(({ id }) => id)));
  return { ...plan, batches, tasks: plan.tasks.filter(({ tray }) => tray === undefined || ids.has(tray)) };
}

it('a batch gives up its number to one that fits nowhere else', async () => {
  const breads = [
    { id: 'rye', pieces: 10 },
    { id: 'wheat', pieces: 30 },
  ].map(({ id, pieces }) => ({ id, dough: 'one', pieceG: 100, piecesPerTray: 10, pieces }));
  const moreOrders = [
    { product: 'rye', pieces: 20, readyBy: '07:00' },
    { product: 'wheat', pieces: 10, readyBy: '08:00' },
  ];
  const day = bakery({ breads, moreOrders, bowlKg: 4 });
  const compiled = compileScenario(day);
  expect(compiled.batches.map(({ trays }) => trays.map(({ id }) => id))).toEqual([
    ['rye', 'wheat', 'wheat', 'wheat'],
    ['rye', 'rye', 'wheat'],
  ]);
  const plan = await planned(day, 20);
  const [large, small] = [...plan.batches].sort((a, b) => b.trays.length - a.trays.length);
  const kept = new Map([
    [large?.id ?? '', ['rye', 'wheat']],
    [small?.id ?? '', ['rye', 'rye']],
  ]);
  // Rye and wheat fit both of ours, the smaller sooner; two ryes fit the smaller only.
  const { layout, isWhole } = startLayout(compiled, keeping(plan, kept));
  expect(isWhole).toBe(true);
  const isPlanned = compiled.trays.filter(({ tasks }) => (layout.start[tasks[0] ?? -1] ?? -1) >= 0);
  expect(isPlanned.map(({ batch, product }) => `${batch} ${product.id}`).sort()).toEqual(['0 rye', '0 wheat', '1 rye', '1 rye']);
});
