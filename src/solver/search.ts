// The improvement loop: part of the schedule is taken out and put back in another order, and the result kept when it is
// better, or now and then when it is a little worse (ruin and recreate: Schrimpf, Schneider, Stamm-Wilbrandt and Dueck 2000,
// Journal of Computational Physics 159; simulated annealing as the rule of acceptance).
import { Builder } from './builder.ts';
import { type Cost, CostCounter } from './cost.ts';
import { type Layout, layoutOfRecords, recordsOf } from './layout.ts';
import { countedChanges, movesOf } from './moves.ts';
import { firstOrders } from './orders.ts';
import type { Random } from './random.ts';
import { type Recreation, recreationOf } from './recreation.ts';
import type { Block, Shop, StayUse } from './shop.ts';
import { type BlockRecord, ShopState } from './shopState.ts';

/** Weight of the sum of ready times beside the price, when deciding whether to move on from a schedule. */
const DENSITY_WEIGHT = 0.002;

/** Room for rounding in sums of prices. */
const EPSILON = 1e-9;

/** Prices below this are as hot as this one: on tiny problems a unit of makespan is a large share. */
const LEAST_PRICE = 100;

/** Share of variables put back later than they could be, in a round that does so, and by how much at most. */
const JITTER_SHARE = 0.3;
const MOST_JITTER = 12;

export class Search {
  readonly state: ShopState;
  readonly builder: Builder;
  private readonly shop: Shop;
  private readonly counter: CostCounter;
  private readonly random: Random;
  private release = 0;
  private current: Cost;
  bestCost: Cost;
  /** Records of the best schedule, in an order in which they can be restored. */
  best: readonly BlockRecord[] = [];
  rounds = 0;
  /** Debug runs: called with every schedule that is accepted, changes counted on its moves. */
  audit: ((layout: Layout, cost: Cost) => void) | null = null;
  /** Quick price of the cheapest schedule that turned out dearer by its moves since the last best: not looked at again. */
  private refusedTotal = Number.POSITIVE_INFINITY;
  /** Of the orders in which schedules were laid out from nothing, the one of the lowest quick price. */
  order: readonly number[] = [];
  orderTotal = Number.POSITIVE_INFINITY;
  /** The chamber a stay is first tried in, -1 for any. */
  hint: ((stay: number) => number) | null = null;

  constructor(shop: Shop, random: Random) {
    this.shop = shop;
    this.random = random;
    this.state = new ShopState(shop);
    this.builder = new Builder(shop, this.state, random);
    this.counter = new CostCounter(this.state);
    this.current = this.counter.count();
    this.bestCost = this.current;
  }

  /** First schedules by several rules of order; keeps the best, and pauses between them. */
  *construct(): Generator<void> {
    for (const [i, order] of firstOrders(this.shop).entries()) {
      this.layOut(order, i % 2 === 1 ? this.hint : null);
      yield;
    }
    this.goBackToBest();
  }

  /** Lays out a schedule from nothing, blocks in an order, each stay first in a chamber. Kept when it is the best. */
  layOut(order: readonly number[], chamberOf: Search['hint']): void {
    for (const block of this.shop.blocks) this.state.clear(block.id);
    this.recreate({ blocks: order, release: () => this.release, isShuffled: false, isJittered: false, chamberOf });
    this.current = this.counter.count();
    if (this.current.total < this.orderTotal) {
      this.order = order;
      this.orderTotal = this.current.total;
    }
    this.keepIfBest();
  }

  /** One round at a temperature relative to the price. Returns whether the best improved. */
  round(heat: number): boolean {
    this.rounds++;
    const recreation = recreationOf(this.shop, this.state, this.counter, this.random, this.release);
    const before = recreation.blocks.map((b) => this.state.record(b));
    for (const b of recreation.blocks) this.state.clear(b);
    this.recreate(recreation);
    const cost = this.counter.count();
    if (this.isAccepted(cost, heat)) {
      this.current = cost;
      if (recreation.newRelease !== undefined) this.release = recreation.newRelease;
      this.audit?.(this.presentLayout(), this.withCountedChanges(cost));
      return this.keepIfBest();
    }
    for (const b of recreation.blocks) this.state.clear(b);
    for (const record of byLoadOpeners(before)) this.state.restore(record);
    return false;
  }

  /** Whether a block may not be left out and can stand at one time only. */
  private isFixed(b: number): boolean {
    const { earliest, latest } = this.shop.network;
    const { children, trunk } = this.shop.blocks[b] as Block;
    return children.length === 0 && trunk.every((v) => earliest[v] === latest[v]);
  }

  /** Places blocks in their order, each after the blocks it must follow; those that can stand at one time only before all others. */
  private recreate(recreation: Recreation): void {
    const fixed = recreation.blocks.filter((b) => this.isFixed(b));
    const waiting =
      fixed.length === 0 ? [...recreation.blocks] : [...fixed, ...recreation.blocks.filter((b) => !fixed.includes(b))];
    while (waiting.length > 0) {
      const at = waiting.findIndex((b) => !(this.shop.blocks[b] as Block).before.some((other) => waiting.includes(other)));
      const [b] = waiting.splice(at, 1) as [number];
      const block = this.shop.blocks[b] as Block;
      const order = block.children.map((_, i) => i);
      if (recreation.isShuffled) shuffle(order, this.random);
      else order.sort((x, y) => this.lengthOf(block, y) - this.lengthOf(block, x));
      this.restrict(block, recreation.chamberOf);
      this.jitter(block, recreation.isJittered);
      this.builder.placeBlock(block, order, recreation.release(b));
    }
  }

  private lengthOf(block: Block, child: number): number {
    const { earliest } = this.shop.network;
    const variables = (block.children[child] as Block['children'][number]).variables;
    return (earliest[variables[variables.length - 1] as number] as number) - (earliest[variables[0] as number] as number);
  }

  private restrict(block: Block, chamberOf: Recreation['chamberOf']): void {
    for (const v of [...block.trunk, ...block.children.flatMap((child) => child.variables)]) {
      for (const s of this.shop.staysOfVar[v] as readonly number[]) {
        this.builder.onlyChamber[s] = chamberOf === null ? -1 : chamberOf(s);
      }
    }
  }

  private jitter(block: Block, isJittered: boolean): void {
    for (const v of [...block.trunk, ...block.children.flatMap((child) => child.variables)]) {
      this.builder.jitter[v] = isJittered && this.random.next() < JITTER_SHARE ? 1 + this.random.below(MOST_JITTER) : 0;
    }
  }

  private guide(cost: Cost): number {
    const tie = this.shop.problem.prices.fromFirstMark
      ? -cost.firstMark
      : cost.sumReady / Math.max(1, this.shop.problem.units.length);
    return cost.total + DENSITY_WEIGHT * tie;
  }

  private isAccepted(cost: Cost, heat: number): boolean {
    const rise = this.guide(cost) - this.guide(this.current);
    if (rise <= 0) return true;
    return heat > 0 && rise < -heat * Math.max(LEAST_PRICE, this.current.total) * Math.log(1 - this.random.next());
  }

  /** Keeps the schedule laid out when it is the best yet, changes counted on its moves. Returns whether it is cheaper. */
  private keepIfBest(): boolean {
    const isFirst = this.best.length === 0;
    if (!isFirst && !this.isBetter(this.current, this.bestCost)) return false;
    if (!isFirst && this.current.total >= this.refusedTotal) return false;
    const cost = this.withCountedChanges(this.current);
    if (!isFirst && !this.isBetter(cost, this.bestCost)) {
      this.refusedTotal = this.current.total;
      return false;
    }
    const isCheaper = isFirst || cost.total < this.bestCost.total - EPSILON;
    this.bestCost = cost;
    this.refusedTotal = Number.POSITIVE_INFINITY;
    this.best = byLoadOpeners(this.shop.blocks.map((block) => this.state.record(block.id)));
    return isCheaper;
  }

  /** Cheaper; or as cheap and begun later, when the span is priced, or denser. */
  private isBetter(a: Cost, b: Cost): boolean {
    if (Math.abs(a.total - b.total) > EPSILON) return a.total < b.total;
    return this.shop.problem.prices.fromFirstMark ? a.firstMark > b.firstMark : a.sumReady < b.sumReady;
  }

  /** The cost with the changes of the moves themselves, where changes have a price: the quick count is a guess. */
  private withCountedChanges(cost: Cost): Cost {
    const { prices, chambers, horizon } = this.shop.problem;
    if (prices.stateChange === 0) return cost;
    const changes = chambers.reduce((sum, chamber, c) => {
      const stays = this.state.chambers[c]?.stays ?? [];
      return sum + countedChanges(chamber, movesOf(chamber, stays, horizon), stays);
    }, 0);
    return { ...cost, changes, total: cost.total + prices.stateChange * (changes - cost.changes) };
  }

  /** Puts blocks of the best schedule back in the given order, not before `release`. Kept when better; as it was otherwise. */
  tryLater(blocks: readonly number[], release: number): boolean {
    const before = this.bestCost;
    for (const b of blocks) this.state.clear(b);
    this.recreate({ blocks, release: () => release, isShuffled: false, isJittered: false, chamberOf: null });
    this.current = this.counter.count();
    this.keepIfBest();
    if (this.bestCost !== before) return true;
    this.goBackToBest();
    return false;
  }

  /** Units that stand in the best schedule and may go back alone, the first ready first. */
  unitsByReady(): readonly { readonly block: number; readonly child: number }[] {
    const found = this.shop.blocks.flatMap((block) =>
      block.children.flatMap(({ unit }, child) => {
        const ready = this.counter.readyTime(unit);
        return ready < 0 ? [] : [{ block: block.id, child, ready }];
      }),
    );
    return found.sort((a, b) => a.ready - b.ready || a.block - b.block || a.child - b.child);
  }

  /**
   * Takes a child of the best schedule out, or what of it follows its first stay, and puts it where it fits earliest, in any
   * chamber or in its own, or else somewhat later but before where it stands. Kept when that is better, see isTidier.
   */
  tryEarlier(blockId: number, child: number, from: 'beginning' | 'stay', keepsChamber: boolean): boolean {
    const block = this.shop.blocks[blockId] as Block;
    const variables = this.partOf(block, child, from);
    if (variables.length === 0) return false;
    const before = this.state.record(blockId);
    const chambers = this.state.chamberOfStay.slice();
    const times = this.state.time.slice();
    this.restrict(block, keepsChamber ? (s) => chambers[s] as number : null);
    this.jitter(block, false);
    if (this.putBackTidier(variables, 0, 0) || this.putBackBetween(variables, times)) return true;
    this.state.clear(blockId);
    this.state.restore(before);
    this.current = this.bestCost;
    return false;
  }

  /** Puts variables of a block back where they fit earliest, the one at an index not before a time; whether that is kept. */
  private putBackTidier(variables: readonly number[], index: number, notBefore: number): boolean {
    for (const v of [...variables].reverse()) if (this.state.isPlaced(v)) this.state.lift(v);
    return this.builder.addVariables(variables, index, notBefore) && this.keepIfTidier();
  }

  /** Puts variables back between where they fit earliest, which was in vain, and `times`, where they stood. */
  private putBackBetween(variables: readonly number[], times: Int32Array): boolean {
    const earliest = variables.map((v) => this.state.time[v] as number);
    return variables.some((v, index) => {
      if (!this.opensStay(v) || (earliest[index] as number) < 0) return false;
      const present = times[v] as number;
      for (let by = (present - (earliest[index] as number)) >> 1; by > 0; by >>= 1) {
        if (this.putBackTidier(variables, index, present - by)) return true;
      }
      return false;
    });
  }

  /** Keeps the schedule laid out as the best when it is tidier. */
  private keepIfTidier(): boolean {
    this.current = this.counter.count();
    // The quick count of changes may be too high: where a move passes through a stay. The rest must be no worse.
    const { stateChange } = this.shop.problem.prices;
    const bare = ({ total, changes }: Cost): number => total - stateChange * changes;
    if (bare(this.current) > bare(this.bestCost) + EPSILON) return false;
    if (bare(this.current) > bare(this.bestCost) - EPSILON && !this.isDenser(this.current, this.bestCost)) return false;
    const cost = this.withCountedChanges(this.current);
    if (!this.isTidier(cost, this.bestCost)) return false;
    this.bestCost = cost;
    this.best = byLoadOpeners(this.shop.blocks.map((other) => this.state.record(other.id)));
    return true;
  }

  /** Variables of a child in placing order: all, unless its burst hangs on it, or those from its first stay on. */
  private partOf(block: Block, child: number, from: 'beginning' | 'stay'): readonly number[] {
    const { variables } = block.children[child] as Block['children'][number];
    if (from === 'beginning') {
      const isAlone = block.children.every((_, i) => i === child || !this.isStanding(block, i));
      return isAlone || this.isBurstLead(variables) ? [] : variables;
    }
    const first = variables.findIndex((v) => this.opensStay(v));
    const part = first < 0 ? [] : variables.slice(first);
    return this.isBurstLead(part) ? [] : part;
  }

  private opensStay(v: number): boolean {
    return (this.shop.staysOfVar[v] as readonly number[]).some((s) => (this.shop.stays[s] as StayUse).startVar === v);
  }

  private isStanding(block: Block, child: number): boolean {
    return (block.children[child] as Block['children'][number]).variables.some((v) => this.state.isPlaced(v));
  }

  private isBurstLead(variables: readonly number[]): boolean {
    return this.shop.burstOfVar.some(
      (entry, v) => entry != null && variables.includes(v) && this.state.leadOfBurst[entry.burst] === v,
    );
  }

  /** Whether it may be tidier for other reasons than its changes, or has fewer of them. */
  private isDenser(a: Cost, b: Cost): boolean {
    return a.sumReady < b.sumReady || a.changes < b.changes;
  }

  /** Cheaper; or as cheap, with fewer changes of state, or as many and ready sooner on the whole. */
  private isTidier(a: Cost, b: Cost): boolean {
    if (Math.abs(a.total - b.total) > EPSILON) return a.total < b.total;
    if (this.shop.problem.prices.fromFirstMark && a.firstMark < b.firstMark) return false;
    if (a.omitted !== b.omitted || a.missing !== b.missing) return false;
    return a.changes !== b.changes ? a.changes < b.changes : a.sumReady < b.sumReady;
  }

  /** Omits, from the best schedule, every unit that costs more than its omission, while there is time. */
  dropDear(mayGoOn: () => boolean): void {
    for (const { block: blockId, child } of [...this.unitsByReady()].reverse()) {
      if (!mayGoOn()) return;
      const block = this.shop.blocks[blockId] as Block;
      const { unit, variables } = block.children[child] as Block['children'][number];
      if ((this.shop.problem.units[unit]?.omissionPrice ?? Infinity) >= this.bestCost.total) continue;
      const before = this.state.record(blockId);
      const isAlone = block.children.every((_, i) => i === child || !this.isStanding(block, i));
      if (!isAlone && this.isBurstLead(variables)) continue;
      if (isAlone) this.state.clear(blockId);
      else for (const v of [...variables].reverse()) this.state.lift(v);
      this.current = this.counter.count();
      if (this.keepIfBest()) continue;
      this.current = this.bestCost;
      this.state.clear(blockId);
      this.state.restore(before);
    }
  }

  /** Adds, to the schedule laid out, every unit left out that fits beside it and lowers the price, while there is time. */
  fillIn(mayGoOn: () => boolean): void {
    for (const block of this.shop.blocks) {
      if (block.before.length + block.after.length > 0) continue;
      for (const [child, { variables }] of block.children.entries()) {
        if (variables.some((v) => this.state.isPlaced(v))) continue;
        if (!mayGoOn()) return;
        const isStanding = block.trunk.some((v) => this.state.isPlaced(v));
        if (!this.builder.addChild(block, child)) continue;
        this.current = this.counter.count();
        if (this.keepIfBest()) continue;
        this.current = this.bestCost;
        if (!isStanding) this.state.clear(block.id);
        else for (const v of variables) this.state.lift(v);
      }
    }
  }

  /** Lays a schedule out in place of the present one, keeps it when it is the best yet, and returns its cost. */
  adopt(layout: Layout): Cost {
    for (const block of this.shop.blocks) this.state.clear(block.id);
    for (const record of recordsOf(this.shop, layout)) this.state.restore(record);
    this.current = this.withCountedChanges(this.counter.count());
    this.refusedTotal = Number.POSITIVE_INFINITY;
    const cost = this.current;
    this.audit?.(layout, cost);
    this.keepIfBest();
    return cost;
  }

  private presentLayout(): Layout {
    return layoutOfRecords(
      this.shop,
      this.shop.blocks.map((block) => this.state.record(block.id)),
    );
  }

  /** Lays out another schedule from nothing, blocks in random order, and improves it for some rounds: a fresh start. */
  startAfresh(rounds: number, heat: number): { readonly layout: Layout; readonly cost: Cost } {
    for (const block of this.shop.blocks) this.state.clear(block.id);
    const order = this.shop.blocks.map((block) => block.id);
    shuffle(order, this.random);
    this.recreate({ blocks: order, release: () => this.release, isShuffled: true, isJittered: false, chamberOf: null });
    this.current = this.counter.count();
    this.keepIfBest();
    for (let i = 0; i < rounds; i++) this.round(heat);
    return { layout: this.presentLayout(), cost: this.withCountedChanges(this.current) };
  }

  /** The best schedule so far as a layout. */
  bestLayout(): Layout {
    return layoutOfRecords(this.shop, this.best);
  }

  /** Lays the best schedule found so far out again. */
  goBackToBest(): void {
    for (const block of this.shop.blocks) this.state.clear(block.id);
    for (const record of this.best) this.state.restore(record);
    this.current = this.bestCost;
  }
}

/** Blocks go back in the order of their first times, so that whoever opened a load is there when others join it. */
function byLoadOpeners(records: readonly BlockRecord[]): BlockRecord[] {
  const first = (record: BlockRecord): number => record.times[0]?.[1] ?? 0;
  return [...records].sort((a, b) => first(a) - first(b));
}

export function shuffle(list: number[], random: Random): void {
  for (let i = list.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    [list[i], list[j]] = [list[j] as number, list[i] as number];
  }
}
