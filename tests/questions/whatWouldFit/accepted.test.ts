// What the day fails at already, accepted: the rest of the plan that fails at it is a plan of what is left, all on time.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { acceptanceOf, withAccepted } from '../../../src/questions/whatWouldFit/accepted.ts';
import { doFit, troubledOrders } from '../../../src/questions/whatWouldFit/trouble.ts';
import { anyScenario } from '../../laws/anyScenario.ts';
import { planned } from '../../laws/planned.ts';

it('a plan started from one that fails, on the day without what it fails at, has nothing late or left out', {
  timeout: 60_000,
}, async () => {
  let failing = 0;
  await fc.assert(
    fc.asyncProperty(anyScenario, async (scenario) => {
      const plan = await planned(scenario, 2);
      const mayFail = new Set(troubledOrders(plan));
      expect(doFit(plan, { orders: [], changeable: [], mayFail })).toBe(true);
      expect(doFit(plan, { orders: [...mayFail], changeable: [], mayFail })).toBe(mayFail.size === 0);
      const left = withAccepted(scenario, acceptanceOf(scenario, plan, mayFail));
      if (mayFail.size === 0) {
        expect(left).toEqual(scenario);
        return;
      }
      failing++;
      const trays = plan.batches.reduce((sum, batch) => sum + batch.trays.length, 0);
      const wanted = left.products.reduce((sum, { id, piecesPerTray }) => {
        const pieces = left.orders.filter(({ product }) => product === id).reduce((all, order) => all + order.pieces, 0);
        return sum + Math.ceil(pieces / piecesPerTray);
      }, 0);
      expect(wanted).toBe(trays);
    }),
    { numRuns: 25, seed: 7 },
  );
  expect(failing).toBeGreaterThan(5);
});
