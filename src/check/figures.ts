// Recounts every figure of a plan from its tasks and set points: lateness, trays left out, makespan, changes,
// steps moved, cost, orders.
import type { PlanOrder } from '../model/plan.ts';
import type { Figures } from './finding.ts';
import { firstHandsOnMinute } from './hands.ts';
import type { JudgedDay } from './judgedDay.ts';
import { movedTasks } from './movedTasks.ts';
import { type ServedOrder, serviceOf } from './service.ts';
import { temperatureChanges } from './temperatureChanges.ts';

/** Rounds to six decimals, as every price and gap is stated. */
export function toSixDecimals(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** Trays of each product that the orders need and the plan has not, by product id. */
export function leftOutByProduct(day: JudgedDay): ReadonlyMap<string, number> {
  return new Map(
    day.ordered.map(({ productId, trays }) => {
      const planned = day.trays.filter((tray) => tray.product.id === productId).length;
      return [productId, Math.max(0, trays - planned)];
    }),
  );
}

/** All decks' temperature changes together. */
function allTemperatureChanges(day: JudgedDay): number {
  const firstBake = new Map<string, number>();
  for (const { task } of day.tasks) {
    if (task.step !== 'bake' || task.place?.kind !== 'deck') continue;
    firstBake.set(task.place.id, Math.min(task.start, firstBake.get(task.place.id) ?? task.start));
  }
  return [...day.decks.values()].reduce((sum, { id, setPoints }) => sum + temperatureChanges(setPoints, firstBake.get(id)), 0);
}

function planOrder(day: JudgedDay, { order, dueMinute, readyMinute }: ServedOrder): PlanOrder {
  return {
    product: order.product,
    pieces: order.pieces,
    readyBy: day.instantOf(dueMinute),
    readyAt: readyMinute === null ? null : day.instantOf(readyMinute),
    lateMinutes: readyMinute === null ? null : Math.max(0, readyMinute - dueMinute),
  };
}

export function figuresOf(day: JudgedDay): Figures {
  const { goals } = day.scenario;
  const service = serviceOf(day);
  const lateTrayMinutes = service.trays.reduce((sum, tray) => sum + tray.lateMinutes, 0);
  const leftOutTrays = [...leftOutByProduct(day).values()].reduce((sum, trays) => sum + trays, 0);
  const finishMinute = service.trays.reduce((latest, tray) => Math.max(latest, tray.readyMinute), 0);
  const changes = allTemperatureChanges(day);
  const handsOnMinute = firstHandsOnMinute(day);
  const makespan = goals.aim === 'start-late' ? finishMinute - handsOnMinute : finishMinute;
  const moved = movedTasks(day);
  const cost =
    goals.lateTrayMinute * lateTrayMinutes +
    goals.leftOutTray * leftOutTrays +
    goals.finishMinute * makespan +
    goals.temperatureChange * changes +
    (day.scenario.underway?.movePrice ?? 0) * (moved ?? 0);
  return {
    cost: toSixDecimals(cost),
    lateTrayMinutes,
    leftOutTrays,
    finishMinute,
    temperatureChanges: changes,
    firstHandsOnMinute: handsOnMinute,
    ...(moved === undefined ? {} : { movedTasks: moved }),
    orders: service.orders.map((order) => planOrder(day, order)),
  };
}
