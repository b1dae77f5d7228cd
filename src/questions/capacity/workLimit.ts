// A limit on the trays of a morning by argument alone: the work of one kind of place, or of hands, against its time. Used by
// capacity. It holds for every plan, however trays are dealt to batches.
import { batchKg } from '../../dough/batchKg.ts';
import { trayDoughKg } from '../../dough/trayDoughKg.ts';
import { traysFor } from '../../dough/traysFor.ts';
import { clockOf, minuteAt } from '../../model/clock.ts';
import type { Dough, Product, Scenario } from '../../model/scenario.ts';
import { WORK_KINDS, type Work, type WorkKind, workOfBatch, workOfTray } from './trayWork.ts';

/** More work than time: what for, how much of each, and within which minutes; `until` excluded. */
export type Overfull = {
  readonly kind: WorkKind;
  readonly neededMinutes: number;
  readonly openMinutes: number;
  readonly from: number;
  readonly until: number;
};

/** Rounding of decimals, as a share of a batch. */
const ROUNDING = 1e-6;

/** Minutes open between two minutes, over all places; `places` where each is open all day and takes one thing after another. */
type Open = { readonly minutes: (from: number, until: number) => number; readonly places: number | null };
type Counted = Work & { readonly count: number };

/** Minutes open of a kind between two minutes, over all its places; undefined when the scenario sets it no limit. */
function openOf(scenario: Scenario, kind: WorkKind): Open | undefined {
  const { ovens, proofers, retarders, mixers, bench, coolingRack } = scenario.equipment;
  const always = (room: number | undefined): Open | undefined =>
    room === undefined ? undefined : { minutes: (from, until) => room * Math.max(0, until - from), places: room };
  const inCabinets = (cabinets: readonly { readonly shelves: number; readonly traysPerShelf: number }[]): number =>
    cabinets.reduce((sum, { shelves, traysPerShelf }) => sum + shelves * traysPerShelf, 0);
  const onDecks = (isCounted: (steam: boolean) => boolean): number =>
    ovens.reduce((sum, { decks }) => sum + decks.reduce((all, { trays, steam }) => all + (isCounted(steam) ? trays : 0), 0), 0);
  switch (kind) {
    case 'deck':
      return always(onDecks(() => true));
    case 'steam':
      return always(onDecks((steam) => steam));
    case 'shelf':
      return always(inCabinets(proofers));
    case 'retarder':
      return always(inCabinets(retarders));
    case 'bench':
      return always(bench?.places);
    case 'bowl':
      return always(mixers?.length);
    case 'rack':
      return always(coolingRack?.trays);
    case 'person':
      return hoursOf(scenario);
  }
}

/** Minutes all people together are there. */
function hoursOf(scenario: Scenario): Open | undefined {
  const { people } = scenario;
  if (people === undefined) return undefined;
  const clock = clockOf(scenario);
  const sums = new Float64Array(clock.minutes + 1);
  for (const person of people) {
    const there = new Uint8Array(clock.minutes);
    const fill = (value: 0 | 1, from: string, until: string): void => {
      there.fill(value, Math.max(0, minuteAt(clock, from)), Math.max(0, minuteAt(clock, until)));
    };
    fill(1, person.from, person.until);
    for (const { from, until } of person.breaks) fill(0, from, until);
    there.forEach((isThere, minute) => {
      sums[minute + 1] = (sums[minute + 1] ?? 0) + isThere;
    });
  }
  for (let minute = 0; minute < clock.minutes; minute++) sums[minute + 1] = (sums[minute + 1] ?? 0) + (sums[minute] ?? 0);
  const at = (minute: number): number => sums[Math.min(clock.minutes, Math.max(0, minute))] ?? 0;
  return { minutes: (from, until) => Math.max(0, at(until) - at(from)), places: null };
}

function largestKg(scenario: Scenario, dough: Dough): number {
  const isMixed = dough.steps.some((step) => step.do === 'mix');
  const bowls = isMixed ? (scenario.equipment.mixers ?? []).map(({ bowlKg }) => bowlKg) : [];
  return Math.min(
    dough.maxBatchKg ?? Number.POSITIVE_INFINITY,
    bowls.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...bowls),
  );
}

/** Fewest batches that hold so many kilograms. */
function fewestBatches(scenario: Scenario, dough: Dough, kg: number): number {
  return Math.max(1, Math.ceil(kg / largestKg(scenario, dough) - ROUNDING));
}

type Needed = { readonly product: Product; readonly trays: number };

/** Trays of each product that have to be ready by a minute. */
function neededBy(scenario: Scenario, minuteOf: (text: string) => number, due: number): readonly Needed[] {
  return scenario.products.flatMap((product) => {
    const pieces = scenario.orders
      .filter((order) => order.product === product.id && minuteOf(order.readyBy) <= due)
      .reduce((sum, order) => sum + order.pieces, 0);
    return pieces === 0 ? [] : [{ product, trays: traysFor(pieces, product.piecesPerTray) }];
  });
}

function workBy(scenario: Scenario, needed: readonly Needed[]): readonly Counted[] {
  return scenario.doughs.flatMap((dough) => {
    const mine = needed.filter(({ product }) => product.dough === dough.id);
    if (mine.length === 0) return [];
    const kg = batchKg(
      mine.map(({ product, trays }) => trays * trayDoughKg(product)),
      dough.lossPercent,
    );
    const batches = workOfBatch(
      scenario,
      dough,
      mine.map(({ product }) => product),
    ).map((work) => ({ ...work, count: fewestBatches(scenario, dough, kg) }));
    return [
      ...batches,
      ...mine.flatMap(({ product, trays }) => workOfTray(scenario, dough, product).map((work) => ({ ...work, count: trays }))),
    ];
  });
}

/** Whether it is more than each place can take one after another, were all of it as short as the shortest. */
function moreThanTurns(inside: readonly Counted[], { places }: Open, minutes: number): boolean {
  if (places === null || inside.length === 0) return false;
  const shortest = Math.min(...inside.map((work) => work.minutes));
  return inside.reduce((sum, { count }) => sum + count, 0) > places * Math.floor(minutes / shortest);
}

/** The first set of work, by how soon it can begin and how long before the end it must be done, that has not the time. */
function overfullIn(kind: WorkKind, all: readonly Counted[], open: Open, due: number): Overfull | null {
  const work = all.filter((one) => one.kind === kind && one.minutes > 0);
  for (const from of new Set(work.map(({ head }) => head))) {
    for (const tail of new Set(work.map((one) => one.tail))) {
      const inside = work.filter((one) => one.head >= from && one.tail >= tail);
      const neededMinutes = inside.reduce((sum, { minutes, count }) => sum + minutes * count, 0);
      const until = Math.max(from, due - tail);
      const openMinutes = open.minutes(from, until);
      if (neededMinutes > openMinutes || moreThanTurns(inside, open, until - from))
        return { kind, neededMinutes, openMinutes, from, until };
    }
  }
  return null;
}

/** What has no time for all trays to be ready when they are wanted, whatever the plan; null when no such argument is found. */
export function overfull(scenario: Scenario): Overfull | null {
  const clock = clockOf(scenario);
  const minuteOf = (text: string): number => minuteAt(clock, text);
  const dues = [...new Set(scenario.orders.map(({ readyBy }) => minuteOf(readyBy)))].sort((a, b) => a - b);
  for (const due of dues) {
    const work = workBy(scenario, neededBy(scenario, minuteOf, due));
    for (const kind of WORK_KINDS) {
      const open = openOf(scenario, kind);
      const found = open === undefined ? null : overfullIn(kind, work, open, due);
      if (found !== null) return found;
    }
  }
  return null;
}
