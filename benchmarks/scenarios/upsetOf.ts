// Upsets of a day drawn at random: what has happened to a plan by some minute. Used by the laws about re-planning and bench:upsets.
import { clockOf, dayOffsetAt, wallClockAt } from '../../src/model/clock.ts';
import { type Happened, type HappenedEvent, happenedSchema } from '../../src/model/happened.ts';
import type { Plan, Task } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';

export type Upset = { readonly now: number; readonly happened: Happened };

type Pick = <T>(list: readonly T[]) => T | undefined;

/** Draws from lists; the same seed draws the same (a linear congruential generator with the constants of Numerical Recipes, 1992). */
function pickFrom(seed: number): { readonly pick: Pick; readonly below: (limit: number) => number } {
  let state = (seed * 2_654_435_761 + 1) >>> 0;
  const below = (limit: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 4_294_967_296) * limit);
  };
  return { below, pick: (list) => list[below(list.length)] };
}

function eventOf(kind: number, scenario: Scenario, plan: Plan, now: number, draw: ReturnType<typeof pickFrom>): HappenedEvent[] {
  const { pick, below } = draw;
  const clock = clockOf(scenario);
  const at = (minute: number): string => {
    const days = dayOffsetAt(clock, minute);
    return `${days === 0 ? '' : `${days > 0 ? '+' : ''}${days}d `}${wallClockAt(clock, minute)}`;
  };
  const until = at(Math.min(plan.day.minutes, now + 20 + below(100)));
  const find = (suits: (task: Task) => boolean): Task | undefined => pick(plan.tasks.filter(suits));
  switch (kind) {
    case 0: {
      const task = find(({ start, step }) => start < now && start >= now - 15 && step !== 'bake');
      return task === undefined ? [] : [{ what: 'not-yet', task: task.id }];
    }
    case 1: {
      const task = find(({ start, end, step }) => step === 'bulk' && start < now && end >= now);
      return task === undefined ? [] : [{ what: 'needs-more', batch: task.batch, minutes: 5 + below(30) }];
    }
    case 2: {
      const task = find(({ start, end, step }) => step === 'proof' && start < now && end >= now);
      return task?.tray === undefined ? [] : [{ what: 'needs-more', tray: task.tray, minutes: 5 + below(30) }];
    }
    case 3: {
      const person = (scenario.people?.length ?? 0) > 1 ? pick(scenario.people ?? []) : undefined;
      return person === undefined ? [] : [{ what: 'away', person: person.id, from: at(now), until }];
    }
    case 4: {
      const oven = pick(scenario.equipment.ovens);
      const deck = pick(oven?.decks ?? []);
      return oven === undefined || deck === undefined
        ? []
        : [{ what: 'out-of-use', deck: `${oven.id}/${deck.id}`, from: at(now), until }];
    }
    case 5: {
      const product = pick(scenario.products);
      return product === undefined
        ? []
        : [{ what: 'ordered', product: product.id, pieces: product.piecesPerTray, readyBy: at(plan.day.minutes - 1) }];
    }
    case 6: {
      const order = pick(scenario.orders);
      const isOnly =
        scenario.orders.filter((other) => other.product === order?.product && other.readyBy === order?.readyBy).length === 1;
      return order === undefined || !isOnly || scenario.orders.length < 2
        ? []
        : [{ what: 'order-cancelled', product: order.product, readyBy: order.readyBy }];
    }
    default: {
      const task = find(({ start, tray }) => start < now && tray !== undefined);
      return task?.tray === undefined ? [] : [{ what: 'lost', tray: task.tray }];
    }
  }
}

/** One or two things that have happened to a plan by a minute in its midst; none when the draw found nothing that could. */
export function upsetOf(scenario: Scenario, plan: Plan, seed: number): Upset {
  const draw = pickFrom(seed);
  const now = Math.max(1, Math.floor(plan.score.finishMinute * (0.15 + 0.01 * draw.below(70))));
  const kinds = [draw.below(8), draw.below(16)];
  const happened = kinds.flatMap((kind) => (kind > 7 ? [] : eventOf(kind, scenario, plan, now, draw)));
  return { now, happened: happenedSchema.parse({ happened }) };
}
