// Builds plausible plans for the drawing tests without any planner: one batch after the other, each thing as soon as
// hands and places are free. The plans are for looking at; nobody claims they are good.
import { clockOf, instantAt, minuteAt } from '../../src/model/clock.ts';
import type { Bakehouse, HandsOn, LeftOut, Place, Plan, PlanBatch, PlanOrder, SetPoint, Task } from '../../src/model/plan.ts';

export type Goods = {
  readonly id: string;
  readonly name: string;
  readonly dough: string;
  readonly trays: number;
  readonly shape: number;
  readonly retard?: number;
  readonly proof: number;
  readonly bake: number;
  readonly atC: number;
  readonly cool: number;
  readonly readyBy: string;
};

export type DoughDay = {
  readonly id: string;
  readonly name: string;
  readonly startAt: string;
  readonly bulk: number;
  readonly kg: number;
};

export type BakeryDay = {
  readonly name: string;
  readonly date: string;
  readonly timeZone: string;
  readonly from: string;
  readonly until: string;
  readonly decks: Bakehouse['decks'];
  readonly proofers: Bakehouse['proofers'];
  readonly retarders: Bakehouse['retarders'];
  readonly mixers: Bakehouse['mixers'];
  readonly benchPlaces: number | null;
  readonly coolingRackTrays: number | null;
  readonly people: readonly {
    readonly id: string;
    readonly name: string;
    readonly from: string;
    readonly until: string;
    readonly breaks: readonly (readonly [string, string])[];
  }[];
  readonly doughs: readonly DoughDay[];
  readonly goods: readonly Goods[];
  readonly leftOut?: readonly LeftOut[];
  readonly cautions?: Plan['cautions'];
  readonly gap?: number;
};

type Busy = { readonly start: number; readonly end: number };
type Draft = Omit<Task, 'startsAt' | 'endsAt'>;

const HEAT_UP_C_PER_MINUTE = 5;
const COOL_DOWN_C_PER_MINUTE = 2;

function isFree(busy: readonly Busy[], start: number, end: number): boolean {
  return busy.every((span) => span.end <= start || span.start >= end);
}

/** Pools of equal places, each with the spans in which it is taken. */
class Pool {
  readonly places: Busy[][];
  constructor(size: number) {
    this.places = Array.from({ length: size }, () => []);
  }
  /** The first minute from `earliest` at which a place is free for `minutes`. */
  find(earliest: number, minutes: number): { readonly start: number; readonly index: number } {
    for (let start = earliest; ; start += 1) {
      const index = this.places.findIndex((busy) => isFree(busy, start, start + minutes));
      if (index !== -1) return { start, index };
    }
  }
  take(index: number, start: number, end: number): void {
    this.places[index]?.push({ start, end });
  }
}

type DeckState = {
  readonly id: string;
  readonly pool: Pool;
  temperatureC: number;
  readyAt: number;
  lastBakeEnd: number;
  readonly setPoints: SetPoint[];
};

type Stay = { readonly start: number; readonly place: Place; readonly leave: (end: number) => void };

type Slot = {
  readonly deck: DeckState;
  readonly start: number;
  readonly index: number;
  readonly isHot: boolean;
  readonly moveMinutes: number;
};

class DayMaker {
  readonly tasks: Draft[] = [];
  readonly day: BakeryDay;
  readonly minute: (clock: string) => number;
  readonly hands: Pool;
  readonly decks: DeckState[];
  readonly bench: Pool;
  readonly rack: Pool;
  readonly shelves: readonly { readonly place: Omit<Place, 'position'>; readonly pool: Pool }[];
  readonly cold: readonly { readonly place: Omit<Place, 'position'>; readonly pool: Pool }[];

  constructor(day: BakeryDay, minute: (clock: string) => number) {
    this.day = day;
    this.minute = minute;
    this.hands = new Pool(day.people.length);
    day.people.forEach((person, index) => {
      this.hands.take(index, -100000, minute(person.from));
      this.hands.take(index, minute(person.until), 100000);
      for (const [from, until] of person.breaks) this.hands.take(index, minute(from), minute(until));
    });
    this.decks = day.decks.map((deck) => ({
      id: deck.id,
      pool: new Pool(deck.trays),
      temperatureC: deck.startsAtC,
      readyAt: 0,
      lastBakeEnd: 0,
      setPoints: [],
    }));
    this.bench = new Pool(day.benchPlaces ?? 20);
    this.rack = new Pool(day.coolingRackTrays ?? 300);
    this.shelves = day.proofers.map((room) => ({ place: { kind: 'shelf', id: room.id }, pool: new Pool(room.places) }));
    this.cold = day.retarders.map((room) => ({ place: { kind: 'retarder', id: room.id }, pool: new Pool(room.places) }));
  }

  /** Hands from `earliest` for `minutes`; none when the bakery names nobody. */
  work(earliest: number, minutes: number, what: HandsOn['for']): { readonly start: number; readonly handsOn: HandsOn[] } {
    if (this.day.people.length === 0) return { start: earliest, handsOn: [] };
    const { start, index } = this.hands.find(earliest, minutes);
    this.hands.take(index, start, start + minutes);
    return { start, handsOn: [{ person: this.day.people[index]?.id ?? '', start, end: start + minutes, for: what }] };
  }

  add(task: Omit<Draft, 'id'>): Draft {
    const made = { ...task, id: `${task.tray ?? task.batch}/${task.step}` };
    this.tasks.push(made);
    return made;
  }

  /** The place that is free first, from then on; the tray waits for it when all are taken. */
  stay(rooms: DayMaker['shelves'], earliest: number): Stay {
    const all = rooms.flatMap(({ place, pool }) =>
      pool.places.map((busy, index) => {
        const start = Math.max(earliest, ...busy.map(({ end }) => end));
        return { start, place: { ...place, position: index + 1 }, leave: (end: number) => pool.take(index, start, end) };
      }),
    );
    return all.reduce((best, one) => (one.start < best.start ? one : best));
  }

  dough(dough: DoughDay, batch: string): number {
    const { start, handsOn } = this.work(this.minute(dough.startAt), 6, 'mix');
    const mixer = this.day.mixers[0];
    this.add({
      step: 'mix',
      batch,
      start,
      end: start + 12,
      handsOn,
      ...(mixer === undefined ? {} : { place: { kind: 'bowl' as const, id: mixer.id, position: 1 } }),
    });
    this.add({ step: 'bulk', batch, start: start + 12, end: start + 12 + dough.bulk, handsOn: [] });
    return start + 12 + dough.bulk;
  }

  slots(goods: Goods, ready: number): Slot {
    const open = this.decks.map((deck) => {
      const isHot = deck.temperatureC === goods.atC;
      const rate = goods.atC > deck.temperatureC ? HEAT_UP_C_PER_MINUTE : COOL_DOWN_C_PER_MINUTE;
      const moveMinutes = isHot ? 0 : Math.ceil(Math.abs(goods.atC - deck.temperatureC) / rate);
      const from = isHot ? deck.readyAt : deck.lastBakeEnd + moveMinutes;
      return { deck, ...deck.pool.find(Math.max(ready, from), goods.bake + 15), isHot, moveMinutes };
    });
    return open.reduce((best, one) => (one.start + (one.isHot ? 0 : 25) < best.start + (best.isHot ? 0 : 25) ? one : best));
  }

  /** The first minute at which a deck and hands are free together. */
  load(goods: Goods, ready: number): { readonly bake: Slot; readonly load: HandsOn[] } {
    let at = ready + 1;
    for (;;) {
      const bake = this.slots(goods, at);
      const free = this.day.people.length === 0 ? bake.start - 1 : this.hands.find(bake.start - 1, 1).start;
      if (free === bake.start - 1) {
        this.heat(bake, goods);
        return { bake, load: this.work(bake.start - 1, 1, 'load').handsOn };
      }
      at = free + 1;
    }
  }

  heat(bake: Slot, goods: Goods): void {
    if (bake.isHot) return;
    const { deck, start, moveMinutes } = bake;
    deck.setPoints.push({ start: start - moveMinutes, end: start, fromC: deck.temperatureC, toC: goods.atC });
    deck.temperatureC = goods.atC;
    deck.readyAt = start;
  }

  tray(goods: Goods, tray: string, batch: string, ready: number): void {
    const own = { product: goods.id, batch, tray };
    const bench = this.bench.find(ready, goods.shape);
    const { start, handsOn } = this.work(bench.start, goods.shape, 'shape');
    this.bench.take(bench.index, start, start + goods.shape);
    const benchPlace =
      this.day.benchPlaces === null ? {} : { place: { kind: 'bench' as const, id: 'bench', position: bench.index + 1 } };
    let end = start + goods.shape;
    this.add({ ...own, step: 'shape', start, end, handsOn, ...benchPlace });
    if (goods.retard !== undefined) {
      const cold = this.stay(this.cold, end);
      end = cold.start + goods.retard;
      this.add({ ...own, step: 'retard', start: cold.start, end, handsOn: [], place: cold.place });
      cold.leave(end);
    }
    const shelf = this.stay(this.shelves, end);
    const { bake, load } = this.load(goods, shelf.start + goods.proof);
    this.add({ ...own, step: 'proof', start: shelf.start, end: bake.start - 1, handsOn: [], place: shelf.place });
    shelf.leave(bake.start - 1);
    const unload = this.work(bake.start + goods.bake, 1, 'unload');
    const bakeEnd = unload.start;
    bake.deck.pool.take(bake.index, bake.start, bakeEnd);
    bake.deck.lastBakeEnd = Math.max(bake.deck.lastBakeEnd, bakeEnd);
    const place = { kind: 'deck' as const, id: bake.deck.id, position: bake.index + 1 };
    this.add({ ...own, step: 'bake', start: bake.start, end: bakeEnd, handsOn: [...load, ...unload.handsOn], place });
    const rack = this.rack.find(bakeEnd + 1, goods.cool);
    this.rack.take(rack.index, bakeEnd + 1, bakeEnd + 1 + goods.cool);
    const rackPlace =
      this.day.coolingRackTrays === null
        ? {}
        : { place: { kind: 'rack' as const, id: 'cooling-rack', position: rack.index + 1 } };
    this.add({ ...own, step: 'cool', start: bakeEnd + 1, end: bakeEnd + 1 + goods.cool, handsOn: [], ...rackPlace });
  }
}

function makeDay(day: BakeryDay, minute: (clock: string) => number): { readonly maker: DayMaker; readonly batches: PlanBatch[] } {
  const maker = new DayMaker(day, minute);
  const batches: PlanBatch[] = [];
  for (const dough of day.doughs) {
    const batch = `${dough.id}-${batches.filter((made) => made.dough === dough.id).length + 1}`;
    const goods = day.goods.filter((one) => one.dough === dough.id && !maker.tasks.some((task) => task.product === one.id));
    const ready = maker.dough(dough, batch);
    const trays = goods.flatMap((one) =>
      Array.from({ length: one.trays }, (_, k) => ({ id: `${one.id}-${k + 1}`, product: one.id, one })),
    );
    for (const { id, one } of trays) maker.tray(one, id, batch, ready);
    batches.push({ id: batch, dough: dough.id, kg: dough.kg, trays: trays.map(({ id, product }) => ({ id, product })) });
  }
  return { maker, batches };
}

function ordersOf(
  day: BakeryDay,
  tasks: readonly Draft[],
  minute: (clock: string) => number,
  at: (minute: number) => string,
): PlanOrder[] {
  return day.goods.map((goods) => {
    const ends = tasks.filter((task) => task.product === goods.id).map((task) => task.end);
    const due = minute(goods.readyBy);
    const isLeftOut = ends.length === 0 || (day.leftOut ?? []).some((left) => left.product === goods.id);
    const ready = Math.max(0, ...ends);
    return {
      product: goods.id,
      pieces: Math.max(1, goods.trays) * 12,
      readyBy: at(due),
      readyAt: isLeftOut ? null : at(ready),
      lateMinutes: isLeftOut ? null : Math.max(0, ready - due),
    };
  });
}

/** A plan for a bakery's day. */
export function planOfDay(day: BakeryDay): Plan {
  const clock = clockOf({ date: day.date, timeZone: day.timeZone, day: { from: day.from, until: day.until } });
  const minute = (text: string) => minuteAt(clock, text);
  const at = (when: number) => instantAt(clock, when);
  const { maker, batches } = makeDay(day, minute);
  const tasks = maker.tasks.map((task) => ({ ...task, startsAt: at(task.start), endsAt: at(task.end) }));
  tasks.sort((a, b) => a.start - b.start || (a.id < b.id ? -1 : 1));
  const orders = ordersOf(day, maker.tasks, minute, at);
  const leftOut = [...(day.leftOut ?? [])];
  const leftOutTrays = leftOut.reduce((sum, { trays }) => sum + trays, 0);
  const gap = day.gap ?? 0;
  const hands = tasks.flatMap((task) => task.handsOn.map(({ start }) => start));
  return {
    plan: 1,
    scenario: { name: day.name, date: day.date, timeZone: day.timeZone, fingerprint: 'sha256:made-for-tests' },
    day: { startsAt: at(0), endsAt: at(clock.minutes), minutes: clock.minutes },
    stopped: gap === 0 ? 'proved' : 'effort',
    holds: tasks.length === 0 ? 'nothing' : leftOutTrays > 0 ? 'partial' : gap === 0 ? 'optimal' : 'feasible',
    score: {
      cost: 500,
      lowerBound: 500 * (1 - gap),
      gap,
      lateTrayMinutes: orders.reduce((sum, { lateMinutes }) => sum + (lateMinutes ?? 0), 0),
      leftOutTrays,
      finishMinute: Math.max(0, ...tasks.map(({ end }) => end)),
      temperatureChanges: maker.decks.reduce((sum, deck) => sum + Math.max(0, deck.setPoints.length - 1), 0),
      firstHandsOnMinute: Math.min(...(hands.length > 0 ? hands : [tasks[0]?.start ?? 0])),
    },
    bound: { argument: 'LONGEST_CHAIN', says: 'The longest product alone takes so long.' },
    tasks,
    decks: maker.decks.map(({ id, setPoints }) => ({ id, setPoints })),
    batches,
    orders,
    leftOut,
    bakehouse: {
      mixers: day.mixers,
      benchPlaces: day.benchPlaces,
      proofers: day.proofers,
      retarders: day.retarders,
      decks: day.decks,
      coolingRackTrays: day.coolingRackTrays,
      people: day.people.map(({ id, name, from, until, breaks }) => ({
        id,
        name,
        hours: { start: minute(from), end: minute(until) },
        breaks: breaks.map(([start, end]) => ({ start: minute(start), end: minute(end) })),
      })),
      doughs: [...new Map(day.doughs.map(({ id, name }) => [id, { id, name }])).values()],
      products: day.goods.map(({ id, name, dough }) => ({ id, name, dough, piecesPerTray: 12, pieceG: 80 })),
    },
    cautions: [...(day.cautions ?? [])],
    solver: { seed: 1, effort: 100, seconds: 0.1, version: '0.1.0', notes: [] },
  };
}
