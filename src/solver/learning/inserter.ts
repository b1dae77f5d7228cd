// Finds room for a unit that a schedule leaves out: the others are held near where they are, but for those about a time of the day
// that are set free with it (large neighbourhood search: Shaw 1998, CP 98, LNCS 1520). Used by a lane while something is left out.
import { type Layout, samePlanned, timesOf } from '../layout.ts';
import type { Random } from '../random.ts';
import type { Shop } from '../shop.ts';
import { twinsOf } from '../twins.ts';
import { heldStill } from './heldStill.ts';
import type { Neighbourhood } from './neighbourhood.ts';
import { ShopModel } from './shopModel.ts';

/** Conflicts one try may take. */
const CONFLICTS = 250;

/** How much of the day is set free at first and at least, as a share; how it grows when a try is refuted, and shrinks when it is too much. */
const FIRST_SIZE = 0.15;
const LEAST_SIZE = 0.05;
const LARGER = 1.25;
const SMALLER = 0.85;

/** Tries for one unit before the next has its turn. */
const TRIES = 8;

/** Models kept while the same units are left out: what one has learned is of use when its unit has its turn again. */
const MOST_MODELS = 4;

/** How much earlier and later others may move, at most. */
const MOST_EARLIER = 30;
const MOST_LATER = 60;

export class Inserter {
  private readonly shop: Shop;
  private readonly scale: number;
  private readonly random: Random;
  private readonly isFree: Uint8Array;
  /** By the unit they add; the one at work last. */
  private readonly models = new Map<number, ShopModel>();
  private model: ShopModel | null = null;
  /** The schedule at hand, as it was given and in the order of twins that the model asks for. */
  private given: Layout | null = null;
  private layout: Layout | null = null;
  private time: Int32Array;
  /** Units left out, whose turn it is first. */
  private waiting: number[] = [];
  private unit = -1;
  private tries = 0;
  private size = FIRST_SIZE;
  /** Conflicts of models that were put away. */
  private spent = 0;
  /** Units that are alike in everything: where one fits so does another. */
  private readonly twins: readonly (readonly number[])[];

  constructor(shop: Shop, scale: number, random: Random) {
    this.shop = shop;
    this.scale = scale;
    this.random = random;
    this.isFree = new Uint8Array(shop.network.variableCount);
    this.time = new Int32Array(0);
    this.twins = twinsOf(shop, () => true).children;
  }

  /** Conflicts so far. */
  get conflicts(): number {
    return [...this.models.values()].reduce((sum, { engine }) => sum + engine.conflicts, this.spent);
  }

  /** Whether no unit fits beside those of a schedule, wherever they are: some would have to give way first. */
  isVain(layout: Layout): boolean {
    return this.given !== null && this.waiting.length === 0 && samePlanned(this.given, layout);
  }

  /** One try at a schedule with one unit more than a given one, which lacks none that must be planned; null when it came to nothing. */
  insert(layout: Layout, mayGoOn: () => boolean): Layout | null {
    if (layout !== this.given) this.setOut(layout);
    if (this.model === null || this.tries >= TRIES) this.takeNext();
    const { model } = this;
    if (model === null || this.layout === null) return null;
    this.tries++;
    const place = this.draw();
    const outcome = model.engine.search(heldStill(model, this.layout, this.time, place), CONFLICTS, mayGoOn);
    switch (outcome) {
      case 'solution':
        this.size = Math.max(LEAST_SIZE, SMALLER * this.size);
        return model.read();
      case 'refuted':
        this.size = Math.min(1, LARGER * this.size);
        return null;
      case 'impossible':
        // Not beside these units, wherever they are.
        this.waiting = this.waiting.filter((unit) => unit !== this.unit);
        this.tries = TRIES;
        this.model = null;
        return null;
      default:
        this.size = Math.max(LEAST_SIZE, SMALLER * this.size);
        return null;
    }
  }

  /** Other times for the same units change no model; other units do. */
  private setOut(layout: Layout): void {
    const isSameUnits = this.given !== null && samePlanned(this.given, layout);
    this.given = layout;
    if (isSameUnits) this.aim();
    else this.beginAnew(layout);
  }

  private beginAnew(layout: Layout): void {
    const { units } = this.shop.problem;
    const isOut = (u: number): boolean => (layout.start[units[u]?.tasks[0] as number] as number) < 0;
    const alike = new Set(this.twins.flatMap((group) => group.filter(isOut).slice(1)));
    this.waiting = units.flatMap((unit, u) => (unit.ready !== null && isOut(u) && !alike.has(u) ? [u] : []));
    for (const unit of [...this.models.keys()]) this.putAway(unit);
    this.model = null;
  }

  private putAway(unit: number): void {
    this.spent += this.models.get(unit)?.engine.conflicts ?? 0;
    this.models.delete(unit);
  }

  /** The model of the planned units and the next one that is left out. */
  private takeNext(): void {
    this.model = null;
    const unit = this.waiting.shift();
    if (unit === undefined || this.given === null) return;
    this.waiting.push(unit);
    this.unit = unit;
    this.tries = 0;
    const model = this.models.get(unit) ?? this.modelWith(unit, this.given);
    this.models.delete(unit);
    this.models.set(unit, model);
    const [oldest] = this.models.keys();
    if (this.models.size > MOST_MODELS && oldest !== undefined) this.putAway(oldest);
    if (model.isPossible) this.model = model;
    else this.waiting.pop();
    this.aim();
  }

  private modelWith(unit: number, { start }: Layout): ShopModel {
    const { units } = this.shop.problem;
    const parent = units[unit]?.parent ?? -1;
    const isPlanned = (u: number): boolean => u === unit || u === parent || (start[units[u]?.tasks[0] ?? -1] ?? -1) >= 0;
    return new ShopModel(this.shop, this.scale, isPlanned, false, true);
  }

  private aim(): void {
    this.layout = this.given === null ? null : (this.model?.aimAt(this.given) ?? null);
    if (this.layout !== null) this.time = timesOf(this.shop, this.layout);
  }

  /** A stretch of the day, longer than the unit takes, is set free, and so is the unit's own block. */
  private draw(): Neighbourhood {
    const { network, blocks, blockOfUnit, problem } = this.shop;
    const { random, time, size } = this;
    this.isFree.fill(0);
    const own = blocks[blockOfUnit[this.unit] as number];
    const tasks = problem.units[this.unit]?.tasks ?? [];
    const first = network.startVar[tasks[0] as number] as number;
    const last = network.endVar[tasks.at(-1) as number] as number;
    const lasts = (network.earliest[last] as number) - (network.earliest[first] as number);
    const from = network.earliest[first] as number;
    const room = Math.max(0, (network.latest[last] as number) - lasts - from);
    const at = from + random.next() * room;
    const slack = size * problem.horizon;
    for (let v = 0; v < time.length; v++) {
      const when = time[v] as number;
      if (when >= at - slack && when <= at + lasts + slack && random.next() < 0.5 + size) this.isFree[v] = 1;
    }
    for (const v of own?.trunk ?? []) this.isFree[v] = 1;
    for (const child of own?.children ?? []) for (const v of child.variables) this.isFree[v] = 1;
    const earlier = random.below(MOST_EARLIER);
    return { kind: 'stretch', isFree: this.isFree, earlier, later: random.below(MOST_LATER), keepsChambers: random.next() < 0.7 };
  }
}
