// Which trays are no longer wanted, because orders were cancelled or made smaller. Used by dayAt.ts.
import { traysFor } from '../../dough/traysFor.ts';
import type { Order, Scenario } from '../../model/scenario.ts';
import type { BatchRuns } from './runs.ts';
import type { SoFar } from './soFar.ts';

/** A tray taken out, and how far it had come: its steps that have begun. */
export type TrayGone = { readonly id: string; readonly stepsBegun: number };

/** Trays beyond what the orders need: those that have not begun first, and of these those that were to be ready last. */
export function traysGone(
  scenario: Scenario,
  orders: readonly Order[],
  batches: readonly BatchRuns[],
  soFar: SoFar,
  lost: ReadonlySet<string>,
): readonly TrayGone[] {
  const trays = batches.flatMap((batch) => batch.trays).filter(({ id }) => !lost.has(id));
  return scenario.products.flatMap(({ id: product, piecesPerTray }) => {
    const pieces = orders.filter((order) => order.product === product).reduce((sum, order) => sum + order.pieces, 0);
    const wanted = pieces === 0 ? 0 : traysFor(pieces, piecesPerTray);
    const own = trays
      .filter((tray) => tray.product === product)
      .map(({ id, jobs }) => ({
        id,
        stepsBegun: jobs.filter(({ task }) => soFar.courses.has(task.id)).length,
        readyMinute: jobs.at(-1)?.task.end ?? 0,
      }))
      .sort((a, b) => a.stepsBegun - b.stepsBegun || b.readyMinute - a.readyMinute || (a.id < b.id ? 1 : -1));
    return own.slice(0, Math.max(0, own.length - wanted)).map(({ id, stepsBegun }) => ({ id, stepsBegun }));
  });
}
