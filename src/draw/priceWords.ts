// How good the plan is and what comes of the day, in words for the head of the sheet.
import type { Plan } from '../model/plan.ts';
import type { DayClock } from './dayClock.ts';

function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "Proved best", or how far at most from the best possible, rounded up. */
export function priceWords(plan: Plan): string {
  if (plan.holds === 'optimal' || plan.score.gap === 0) return 'Proved best: no plan of this day has a lower price.';
  // Rounded up, and never by the noise of binary fractions.
  const percent = Math.ceil(Math.round(plan.score.gap * 1e6) / 1e3) / 10;
  return `At most ${percent}\u00a0% from the best possible.`;
}

/** First hands-on, last tray ready, late and left out. */
export function dayWords(plan: Plan, clock: DayClock): string {
  const trays = new Set(plan.tasks.flatMap((task) => (task.tray === undefined ? [] : [task.tray]))).size;
  if (trays === 0) return `No tray is planned, ${plan.score.leftOutTrays} left out.`;
  const lateOrders = plan.orders.filter((order) => (order.lateMinutes ?? 0) > 0).length;
  const late = lateOrders === 0 ? 'none late' : `${plural(lateOrders, 'order', 'orders')} late`;
  const leftOut = plan.score.leftOutTrays === 0 ? '' : `, ${plural(plan.score.leftOutTrays, 'tray', 'trays')} left out`;
  const first = clock.says(plan.score.firstHandsOnMinute);
  const last = clock.says(plan.score.finishMinute);
  return `${plural(trays, 'tray', 'trays')}: hands on from ${first}, last tray ready ${last}, ${late}${leftOut}.`;
}
