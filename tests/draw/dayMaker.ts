// Books one made-up bakery day, thing after thing, as soon as hands and places are free.
import type { HandsOn, Place, SetPoint, Task } from '../../src/model/plan.ts';
import type { BakeryDay, DoughDay, Goods } from './bakeryDay.ts';
import { Pool } from './freePlaces.ts';

export type Draft = Omit<Task, 'startsAt' | 'endsAt'>;

const MIX_MINUTES = 12;
const HEAT_UP_C_PER_MINUTE = 5;
const COOL_DOWN_C_PER_MINUTE = 2;

type DeckState = {
  readonly id: string;
  readonly pool: Pool;
  temperatureC: number;
  readyAt: number;
  lastBakeEnd: number;
  readonly setPoints: SetPoint[];
};

type Proofing = {
  readonly goods: Goods;
  readonly own: { readonly product: string; readonly batch: string; readonly tray: string };
  readonly proofed: number;
  /** Takes the tray off its shelf. */
  readonly leave: (at: number) => void;
};

type Stay = { readonly start: number; readonly place: Place; readonly leave: (end: number) => void };

type Slot = {
  readonly deck: DeckState;
  readonly start: number;
  readonly index: number;
  readonly isHot: boolean;
  readonly moveMinutes: number;
};

export class DayMaker {
  readonly tasks: Draft[] = [];
  readonly day: BakeryDay;
  readonly minute: (clock: string) => number;
  readonly hands: Pool;
  readonly decks: DeckState[];
  readonly bench: Pool;
  readonly bowls: Pool;
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
    this.bowls = new Pool(Math.max(1, day.mixers.length));
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
        return { start, pool, index, place: { ...place, position: index + 1 } };
      }),
    );
    const { start, pool, index, place } = all.reduce((best, one) => (one.start < best.start ? one : best));
    // Taken for good until it is known when the tray leaves.
    const taken = { start, end: 100000 };
    pool.places[index]?.push(taken);
    return {
      start,
      place,
      leave: (end) => {
        taken.end = end;
      },
    };
  }

  dough(dough: DoughDay, batch: string): number {
    const { start, handsOn } = this.work(this.minute(dough.startAt), 6, 'mix');
    const bowl = this.bowls.find(start, MIX_MINUTES).index;
    this.bowls.take(bowl, start, start + MIX_MINUTES);
    const mixer = this.day.mixers[bowl];
    this.add({
      step: 'mix',
      batch,
      start,
      end: start + MIX_MINUTES,
      handsOn,
      ...(mixer === undefined ? {} : { place: { kind: 'bowl' as const, id: mixer.id, position: 1 } }),
    });
    this.add({ step: 'bulk', batch, start: start + MIX_MINUTES, end: start + MIX_MINUTES + dough.bulk, handsOn: [] });
    return start + MIX_MINUTES + dough.bulk;
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

  /** The first minute at which a bench place and hands are free together. */
  benchWithHands(ready: number, minutes: number): { readonly start: number; readonly index: number } {
    let at = ready;
    for (;;) {
      const bench = this.bench.find(at, minutes);
      const hands = this.day.people.length === 0 ? bench : this.hands.find(bench.start, minutes);
      if (hands.start === bench.start) return bench;
      at = hands.start;
    }
  }

  /** Shaping and, where the goods want it, the night in the cold; then a shelf. */
  proof(goods: Goods, tray: string, batch: string, ready: number): Proofing {
    const own = { product: goods.id, batch, tray };
    const bench = this.benchWithHands(ready, goods.shape);
    const { start, handsOn } = this.work(bench.start, goods.shape, 'shape');
    this.bench.take(bench.index, start, start + goods.shape);
    const place = { kind: 'bench' as const, id: 'bench', position: bench.index + 1 };
    let end = start + goods.shape;
    this.add({ ...own, step: 'shape', start, end, handsOn, ...(this.day.benchPlaces === null ? {} : { place }) });
    if (goods.retard !== undefined) {
      const cold = this.stay(this.cold, end);
      end = cold.start + goods.retard;
      this.add({ ...own, step: 'retard', start: cold.start, end, handsOn: [], place: cold.place });
      cold.leave(end);
    }
    const shelf = this.stay(this.shelves, end);
    const leave = (at: number) => {
      this.add({ ...own, step: 'proof', start: shelf.start, end: at, handsOn: [], place: shelf.place });
      shelf.leave(at);
    };
    return { goods, own, proofed: shelf.start + goods.proof, leave };
  }

  cool({ goods, own }: Proofing, start: number): void {
    const rack = this.rack.find(start, goods.cool);
    this.rack.take(rack.index, start, start + goods.cool);
    const place = { kind: 'rack' as const, id: 'cooling-rack', position: rack.index + 1 };
    const isCounted = this.day.coolingRackTrays !== null;
    this.add({ ...own, step: 'cool', start, end: start + goods.cool, handsOn: [], ...(isCounted ? { place } : {}) });
  }

  /** One tray by itself. */
  bake(tray: Proofing): void {
    const { bake, load } = this.load(tray.goods, tray.proofed);
    tray.leave(bake.start - 1);
    const unload = this.work(bake.start + tray.goods.bake, 1, 'unload');
    const end = unload.start;
    bake.deck.pool.take(bake.index, bake.start, end);
    bake.deck.lastBakeEnd = Math.max(bake.deck.lastBakeEnd, end);
    const place = { kind: 'deck' as const, id: bake.deck.id, position: bake.index + 1 };
    this.add({ ...tray.own, step: 'bake', start: bake.start, end, handsOn: [...load, ...unload.handsOn], place });
    this.cool(tray, end + 1);
  }

  /** A rack pushed in whole: all trays in and out together, the hands-on on the tray in the lowest position. */
  bakeTogether(trays: readonly Proofing[]): void {
    const [first] = trays;
    if (first === undefined) return;
    const { bake, load } = this.load(first.goods, Math.max(...trays.map(({ proofed }) => proofed)));
    const unload = this.work(bake.start + first.goods.bake, 1, 'unload');
    const end = unload.start;
    trays.forEach((tray, index) => {
      tray.leave(bake.start - 1);
      bake.deck.pool.take(index, bake.start, end);
      const place = { kind: 'deck' as const, id: bake.deck.id, position: index + 1 };
      const handsOn = index === 0 ? [...load, ...unload.handsOn] : [];
      this.add({ ...tray.own, step: 'bake', start: bake.start, end, handsOn, place });
      this.cool(tray, end + 1);
    });
    bake.deck.lastBakeEnd = end;
    bake.deck.readyAt = end + 1;
  }
}
