// Whether a scenario is the same or less strict than another: every plan of the one is, or leads to, a plan of the other at the
// same price. Used by compare to plan in the order in which things get roomier, and to say what is proved.

import { clockOf, minuteAt } from '../../model/clock.ts';
import type { Deck, Oven } from '../../model/equipment.ts';
import type { Dough, Person, Product, Scenario } from '../../model/scenario.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { rangeOf } from '../../model/units.ts';

type Named = { readonly id: string };

/** Equal values, whatever the order of keys; a key without a value is no key. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => isSame(Reflect.get(a, key), Reflect.get(b, key)));
}

/** Equal but for the named keys, and for what things are called. */
function isSameBut<T extends object>(a: T, b: T, ...keys: readonly (keyof T)[]): boolean {
  const bare = (thing: T): object =>
    Object.fromEntries(Object.entries(thing).filter(([key]) => key !== 'name' && !keys.some((known) => known === key)));
  return isSame(bare(a), bare(b));
}

/** Everything of the first list has its like in the second, which may hold more. */
function hasAll<T extends Named>(a: readonly T[], b: readonly T[], isNoStricterThing: (a: T, b: T) => boolean): boolean {
  return a.every((one) => {
    const other = b.find(({ id }) => id === one.id);
    return other !== undefined && isNoStricterThing(one, other);
  });
}

/** A limit that is absent limits nothing. */
function isNoLower(a: number | undefined, b: number | undefined): boolean {
  return b === undefined || (a !== undefined && b >= a);
}

const deckIsNoStricter = (a: Deck, b: Deck): boolean =>
  isSameBut(a, b, 'trays', 'minC', 'maxC', 'steam') &&
  b.trays >= a.trays &&
  b.minC <= a.minC &&
  b.maxC >= a.maxC &&
  (b.steam || !a.steam);

const ovenIsNoStricter = (a: Oven, b: Oven): boolean =>
  isSameBut(a, b, 'heatUpCPerMinute', 'coolDownCPerMinute', 'powerKw', 'decks') &&
  b.heatUpCPerMinute >= a.heatUpCPerMinute &&
  b.coolDownCPerMinute >= a.coolDownCPerMinute &&
  hasAll(a.decks, b.decks, deckIsNoStricter);

type Cabinet = Named & { readonly shelves: number; readonly traysPerShelf: number; readonly temperatureC: number };

const cabinetIsNoStricter = (a: Cabinet, b: Cabinet): boolean =>
  a.temperatureC === b.temperatureC && b.shelves * b.traysPerShelf >= a.shelves * a.traysPerShelf;

function equipmentIsNoStricter({ equipment: a }: Scenario, { equipment: b }: Scenario): boolean {
  const mixers = b.mixers === undefined || (a.mixers !== undefined && hasAll(a.mixers, b.mixers, (x, y) => y.bowlKg >= x.bowlKg));
  return (
    mixers &&
    hasAll(a.ovens, b.ovens, ovenIsNoStricter) &&
    hasAll(a.proofers, b.proofers, cabinetIsNoStricter) &&
    hasAll(a.retarders, b.retarders, cabinetIsNoStricter) &&
    isNoLower(a.bench?.places, b.bench?.places) &&
    isNoLower(a.coolingRack?.trays, b.coolingRack?.trays)
  );
}

/** Whether a person is there, inside hours and outside breaks, whenever the other is, and does whatever the other does. */
function personIsNoStricter(a: Person, b: Person, minuteOf: (text: string) => number): boolean {
  const covers = (x: { from: string; until: string }, y: { from: string; until: string }): boolean =>
    minuteOf(x.from) <= minuteOf(y.from) && minuteOf(x.until) >= minuteOf(y.until);
  return (
    isSameBut(a, b, 'from', 'until', 'breaks', 'cannot') &&
    covers(b, a) &&
    b.breaks.every((pause) => a.breaks.some((other) => covers(other, pause))) &&
    b.cannot.every((step) => a.cannot.includes(step))
  );
}

function peopleAreNoStricter(a: Scenario, b: Scenario, minuteOf: (text: string) => number): boolean {
  if (b.people === undefined) return true;
  return a.people !== undefined && hasAll(a.people, b.people, (x, y) => personIsNoStricter(x, y, minuteOf));
}

/** A step with the same work, and as much freedom or more in how long it takes and what may wait. */
function stepIsNoStricter(a: BatchStep | TrayStep, b: BatchStep | TrayStep): boolean {
  const contains = (outer: number | readonly [number, number], inner: number | readonly [number, number]): boolean =>
    rangeOf(outer).min <= rangeOf(inner).min && rangeOf(outer).max >= rangeOf(inner).max;
  if (a.do !== b.do || b.waitUpTo < a.waitUpTo) return false;
  const free: string[] = ['waitUpTo'];
  if (a.do !== 'mix' && 'minutes' in a && 'minutes' in b) {
    if (!contains(b.minutes, a.minutes)) return false;
    free.push('minutes');
  }
  const [aC, bC] = ['temperatureC' in a ? a.temperatureC : undefined, 'temperatureC' in b ? b.temperatureC : undefined];
  if (bC !== undefined && (aC === undefined || !contains(bC, aC))) return false;
  free.push('temperatureC');
  const bare = (step: object): object => Object.fromEntries(Object.entries(step).filter(([key]) => !free.includes(key)));
  return isSame(bare(a), bare(b));
}

function stepsAreNoStricter(a: readonly (BatchStep | TrayStep)[], b: readonly (BatchStep | TrayStep)[]): boolean {
  return (
    a.length === b.length &&
    a.every((step, index) => {
      const other = b[index];
      return other !== undefined && stepIsNoStricter(step, other);
    })
  );
}

const doughIsNoStricter = (a: Dough, b: Dough): boolean =>
  isSameBut(a, b, 'maxBatchKg', 'shapeWithin', 'steps', 'formula', 'allergens') &&
  isNoLower(a.maxBatchKg, b.maxBatchKg) &&
  b.shapeWithin >= a.shapeWithin &&
  stepsAreNoStricter(a.steps, b.steps);

const productIsNoStricter = (a: Product, b: Product): boolean =>
  isSameBut(a, b, 'steps', 'allergens', 'coldFilling') && stepsAreNoStricter(a.steps, b.steps);

/** Of every product, at every time, no more pieces are wanted by then. */
function ordersAreNoStricter(a: Scenario, b: Scenario, minuteOf: (text: string) => number): boolean {
  const wanted = ({ orders }: Scenario, product: string, by: number): number =>
    orders
      .filter((order) => order.product === product && minuteOf(order.readyBy) <= by)
      .reduce((sum, { pieces }) => sum + pieces, 0);
  return b.orders.every(({ product, readyBy }) => wanted(b, product, minuteOf(readyBy)) <= wanted(a, product, minuteOf(readyBy)));
}

/** Whether prices of plans can be held side by side: the same prices, counted from the same moment. */
export function hasSamePrices(a: Scenario, b: Scenario): boolean {
  return isSame(a.goals, b.goals) && isSame(startOf(a), startOf(b)) && isSame(a.underway, b.underway);
}

const startOf = ({ date, timeZone, day }: Scenario): object => ({ date, timeZone, from: day.from });

/** Whether `b` asks for no more than `a` and gives no less room, prices aside. */
export function isNoStricter(a: Scenario, b: Scenario): boolean {
  if (!isSame(startOf(a), startOf(b)) || !isSame(a.underway, b.underway)) return false;
  const clock = clockOf(a);
  const minuteOf = (text: string): number => minuteAt(clock, text);
  return (
    minuteOf(b.day.until) >= minuteOf(a.day.until) &&
    equipmentIsNoStricter(a, b) &&
    peopleAreNoStricter(a, b, minuteOf) &&
    hasAll(a.doughs, b.doughs, doughIsNoStricter) &&
    hasAll(a.products, b.products, productIsNoStricter) &&
    ordersAreNoStricter(a, b, minuteOf)
  );
}

/** Whether the same is wanted of both, so that so many trays more mean the same trays. */
export function hasSameOrders(a: Scenario, b: Scenario): boolean {
  return isSame(a.orders, b.orders);
}

/** Whether both deal the same trays to the same batches: what a search proves of the one then says something of the other. */
export function hasSameBatches(a: Scenario, b: Scenario): boolean {
  const sizes = (scenario: Scenario): object => ({
    bowls: scenario.equipment.mixers?.map(({ bowlKg }) => bowlKg).sort((x, y) => y - x)[0],
    doughs: scenario.doughs.map(({ id, maxBatchKg, lossPercent }) => ({ id, maxBatchKg, lossPercent })),
    orders: scenario.orders,
  });
  return isSame(sizes(a), sizes(b));
}
