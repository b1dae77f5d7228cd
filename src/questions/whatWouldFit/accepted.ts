// A day without what it fails at already: orders that may stay late are wanted when they are ready, pieces that may stay left
// out are not wanted. What is left can be all on time or not: a yes-or-no question. Used by whatWouldFit and fit.
import { sayMinute } from '../../check/sayMinute.ts';
import { traysFor } from '../../dough/traysFor.ts';
import { clockOf, minuteAt } from '../../model/clock.ts';
import type { Plan } from '../../model/plan.ts';
import type { Order, Scenario } from '../../model/scenario.ts';

/** What is accepted of one order: a later time, fewer pieces. */
type Accepted = { readonly readyBy: string | undefined; readonly fewer: number };

export type Acceptance = ReadonlyMap<number, Accepted>;

/** Pieces of a product that are on trays left out, with what a last tray has room for not counted. */
function missingPieces(scenario: Scenario, plan: Plan, productId: string): number {
  const leftOut = plan.leftOut.find(({ product }) => product === productId)?.trays ?? 0;
  const perTray = scenario.products.find(({ id }) => id === productId)?.piecesPerTray ?? 1;
  const pieces = scenario.orders.filter(({ product }) => product === productId).reduce((sum, order) => sum + order.pieces, 0);
  return leftOut === 0 ? 0 : Math.max(0, pieces - (traysFor(pieces, perTray) - leftOut) * perTray);
}

/** What a plan of the scenario fails at, of the orders named: their real times, and the pieces it does not have. */
export function acceptanceOf(scenario: Scenario, plan: Plan, mayFail: ReadonlySet<number>): Acceptance {
  const clock = clockOf(scenario);
  const latestFirst = [...mayFail].sort(
    (a, b) => minuteAt(clock, orderAt(scenario, b).readyBy) - minuteAt(clock, orderAt(scenario, a).readyBy) || b - a,
  );
  const missing = new Map<string, number>();
  const accepted = new Map<number, Accepted>();
  for (const index of latestFirst) {
    const { product, pieces } = orderAt(scenario, index);
    const left = missing.get(product) ?? missingPieces(scenario, plan, product);
    const readyAt = plan.orders[index]?.readyAt ?? null;
    const fewer = readyAt === null ? Math.min(left, pieces) : 0;
    missing.set(product, left - fewer);
    const readyMinute = readyAt === null ? null : Math.round((Date.parse(readyAt) - clock.startEpochMs) / 60_000);
    accepted.set(index, { readyBy: readyMinute === null ? scenario.day.until : sayMinute(clock, readyMinute), fewer });
  }
  return accepted;
}

function orderAt({ orders }: Scenario, index: number): Order {
  const order = orders[index];
  if (order === undefined) throw new RangeError(`no order ${index}`);
  return order;
}

/** The scenario, or a changed version of it with the same orders in the same places, without what is accepted. */
export function withAccepted(scenario: Scenario, acceptance: Acceptance): Scenario {
  if (acceptance.size === 0) return scenario;
  const orders = scenario.orders.flatMap((order, index) => {
    const accepted = acceptance.get(index);
    if (accepted === undefined) return [order];
    const { readyBy, fewer } = accepted;
    return fewer >= order.pieces ? [] : [{ ...order, pieces: order.pieces - fewer, readyBy: readyBy ?? order.readyBy }];
  });
  return { ...scenario, orders };
}
