// Which variables a step of the improver sets free, and how far the others may move: large neighbourhood search (Shaw 1998,
// CP 98, LNCS 1520) with sizes that adapt to what could be searched through.
import type { Random } from '../random.ts';
import type { Shop } from '../shop.ts';
import { isSmall } from '../smallProblem.ts';

/**
 * Kinds of neighbourhood: a stretch of time, whole blocks, what costs and the blocks in its way, units near a time, the end of
 * the day, everything a little, all, or room for a unit that is left out.
 */
export const KINDS = ['stretch', 'blocks', 'dear', 'units', 'last', 'little', 'all', 'room'] as const;
export type Kind = (typeof KINDS)[number];

export type Neighbourhood = {
  readonly kind: Kind;
  /** 1: may take any value. */
  readonly isFree: Uint8Array;
  /** How much earlier and later the other variables may be. */
  readonly earlier: number;
  readonly later: number;
  /** Whether stays of other variables keep their chamber. */
  readonly keepsChambers: boolean;
  /** Whether units that are left out may be planned, where the model lets them. */
  readonly mayPlan: boolean;
};

/** How much later, at most, others may be where something dear is to come forward. */
const MOST_LATER = 60;

/** On small problems, and on others. */
const FIRST_SIZE = 0.3;
const FIRST_SIZE_OF_MANY = 0.15;
const LEAST_SIZE = 0.02;
const LARGER = 1.09;
const SMALLER = 0.94;

/** Small problems are searched as a whole again and again: what is learned adds up. */
const WHOLE_WEIGHT = 3;
/** Others are searched as a whole now and then, and only after so many steps in vain: it takes long and gains least. */
const FIRST_WHOLE_WEIGHT = 0.3;
const VAIN_BEFORE_WHOLE = 100;

/** Share of the steps in which units that are left out may be planned. */
const PLANS_SHARE = 0.5;

/** How much faster sizes change while the schedule is far from the floor. */
const QUICK = 3;

/** Room for one unit more is worth more than all else. */
const ROOM_WEIGHT = 3;
const LEAST_ROOM_WEIGHT = 1;

/** Weights that kinds begin with; 1 for the others. */
const FIRST_WEIGHTS: Readonly<Partial<Record<Kind, number>>> = { all: FIRST_WHOLE_WEIGHT, room: ROOM_WEIGHT };

/** Weight a kind keeps when it never succeeds, and how fast success is forgotten. */
const LEAST_WEIGHT = 0.15;
const MEMORY = 0.95;

export class Neighbourhoods {
  private readonly shop: Shop;
  private readonly random: Random;
  private readonly size: Map<Kind, number>;
  private readonly weight: Map<Kind, number>;
  private readonly isFree: Uint8Array;
  private readonly isSmall: boolean;
  private isFar = false;
  /** Steps since the last that found something better. */
  private vain = 0;

  constructor(shop: Shop, random: Random) {
    this.shop = shop;
    this.random = random;
    this.isFree = new Uint8Array(shop.network.variableCount);
    this.isSmall = isSmall(shop.problem);
    const firstSize = this.isSmall ? FIRST_SIZE : FIRST_SIZE_OF_MANY;
    this.size = new Map(KINDS.map((kind) => [kind, firstSize]));
    this.weight = new Map(KINDS.map((kind) => [kind, Math.max(this.leastWeight(kind), FIRST_WEIGHTS[kind] ?? 1)]));
  }

  /** Draws a neighbourhood of the schedule with these times; -1: the variable is not planned. `isFar`: seldom all of it. */
  draw(time: Int32Array, isFar: boolean): Neighbourhood {
    this.isFar = isFar;
    const missing = this.missingUnits(time);
    const kind = this.drawKind(missing.length > 0, isFar);
    const size = this.size.get(kind) as number;
    this.isFree.fill(0);
    const end = time.reduce((latest, at) => Math.max(latest, at), 0);
    const { random } = this;
    const spread = {
      earlier: 8 + random.below(24),
      later: random.below(10),
      keepsChambers: random.next() < 0.85,
      mayPlan: missing.length > 0 && random.next() < PLANS_SHARE,
    };
    switch (kind) {
      case 'stretch': {
        const length = size * end;
        this.freeBetween(time, random.next() * (end + length) - length, length);
        break;
      }
      case 'last':
        this.freeBetween(time, end - size * end, end);
        break;
      case 'blocks':
        this.freeBlocks(size);
        break;
      case 'dear':
        this.freeAround(time, this.dearUnit(time), size);
        return { kind, isFree: this.isFree, ...spread, later: random.below(MOST_LATER) };
      case 'units':
        this.freeUnits(time, random.next() * end, size);
        break;
      case 'all':
        this.isFree.fill(1);
        break;
      case 'room':
        this.freeRoom(time, missing[random.below(missing.length)] as number, size);
        return { kind, isFree: this.isFree, ...spread, later: random.below(MOST_LATER), mayPlan: true };
      case 'little': {
        const { mayPlan } = spread;
        const [earlier, later] = [Math.round(60 * size), Math.round(40 * size)];
        return { kind, isFree: this.isFree, earlier, later, keepsChambers: false, mayPlan };
      }
    }
    return { kind, isFree: this.isFree, ...spread };
  }

  private drawKind(isAnyMissing: boolean, isFar: boolean): Kind {
    const weightOf = (kind: Kind): number => {
      if (kind === 'room' && !isAnyMissing) return 0;
      if (kind === 'all' && this.vain < VAIN_BEFORE_WHOLE && !this.isSmall) return 0;
      const weight = this.weight.get(kind) as number;
      return kind === 'all' && isFar ? Math.min(weight, FIRST_WHOLE_WEIGHT) : weight;
    };
    const total = KINDS.reduce((sum, kind) => sum + weightOf(kind), 0);
    let left = this.random.next() * total;
    for (const kind of KINDS) {
      left -= weightOf(kind);
      if (left < 0) return kind;
    }
    return KINDS[0];
  }

  /** Units that are left out. */
  private missingUnits(time: Int32Array): number[] {
    const { problem, network } = this.shop;
    return problem.units.flatMap(({ ready, tasks }, u) =>
      ready !== null && (time[network.startVar[tasks[0] as number] as number] as number) < 0 ? [u] : [],
    );
  }

  /** Frees the block of a unit that is left out, and some of what happens in a stretch of the day that it could be made in. */
  private freeRoom(time: Int32Array, unit: number, size: number): void {
    const { network, blocks, blockOfUnit, problem } = this.shop;
    const tasks = problem.units[unit]?.tasks ?? [];
    const first = network.startVar[tasks[0] as number] as number;
    const last = network.endVar[tasks.at(-1) as number] as number;
    const from = network.earliest[first] as number;
    const lasts = (network.earliest[last] as number) - from;
    const at = from + this.random.next() * Math.max(0, (network.latest[last] as number) - lasts - from);
    const slack = size * problem.horizon * 0.5;
    time.forEach((when, v) => {
      if (when >= at - slack && when <= at + lasts + slack && this.random.next() < 0.5 + size) this.isFree[v] = 1;
    });
    const own = blocks[blockOfUnit[unit] as number];
    if (own !== undefined) this.freeBlock(own);
  }

  private freeBetween(time: Int32Array, from: number, length: number): void {
    time.forEach((at, v) => {
      if (at >= from && at <= from + length) this.isFree[v] = 1;
    });
  }

  private freeBlocks(size: number): void {
    const { blocks } = this.shop;
    const count = Math.max(1, Math.round(size * blocks.length));
    for (let i = 0; i < count; i++) {
      this.freeBlock(blocks[this.random.below(blocks.length)] as Shop['blocks'][number]);
    }
  }

  private freeBlock({ trunk, children }: Shop['blocks'][number]): void {
    for (const v of trunk) this.isFree[v] = 1;
    for (const child of children) for (const v of child.variables) this.isFree[v] = 1;
  }

  /** A unit that is late, or, where none is, one of the last to be ready. */
  private dearUnit(time: Int32Array): number {
    const { problem, network } = this.shop;
    const ready = problem.units.map(({ ready: mark }) => {
      if (mark === null) return -1;
      const isStart = mark.edge === 'start';
      const at = time[(isStart ? network.startVar : network.endVar)[mark.task] as number] as number;
      return at < 0 ? -1 : at + ((isStart ? network.startOff : network.endOff)[mark.task] as number) + mark.offset;
    });
    const late = problem.families.flatMap((family, f) => {
      if (family.latePrice === 0) return [];
      const mine = ready.flatMap((at, u) => (at >= 0 && problem.units[u]?.family === f ? [u] : []));
      mine.sort((a, b) => (ready[a] as number) - (ready[b] as number));
      return mine.filter((u, k) => (ready[u] as number) > (family.dues[k] as number));
    });
    if (late.length > 0) return late[this.random.below(late.length)] as number;
    const last = ready.map((at, u) => ({ u, at: at * (1 - 0.1 * this.random.next()) })).sort((a, b) => b.at - a.at);
    return last[0]?.u ?? 0;
  }

  /** Frees the block of a unit and those that begin near it, as many as the size says. */
  private freeAround(time: Int32Array, unit: number, size: number): void {
    const { blocks, blockOfUnit } = this.shop;
    const startOf = (block: Shop['blocks'][number]): number =>
      [...block.trunk, ...block.children.flatMap((child) => child.variables)].reduce((first, v) => {
        const at = time[v] as number;
        return at >= 0 && at < first ? at : first;
      }, Number.POSITIVE_INFINITY);
    const seed = blockOfUnit[unit] as number;
    const centre = blocks[seed] === undefined ? 0 : startOf(blocks[seed]);
    const near = blocks
      .map((block) => ({ block, far: block.id === seed ? -1 : Math.abs(startOf(block) - centre) * (0.2 + this.random.next()) }))
      .filter(({ far }) => Number.isFinite(far))
      .sort((a, b) => a.far - b.far);
    for (const { block } of near.slice(0, Math.max(2, Math.round(size * near.length)))) this.freeBlock(block);
  }

  private freeUnits(time: Int32Array, centre: number, size: number): void {
    const near = this.shop.blocks.flatMap((block) => {
      const parts = block.children.length > 0 ? block.children.map((child) => child.variables) : [block.trunk];
      return parts.map((variables) => {
        const at = time[variables[variables.length - 1] as number] as number;
        return { block, variables, far: Math.abs(at - centre) * (0.3 + this.random.next()) };
      });
    });
    near.sort((a, b) => a.far - b.far);
    for (const { block, variables } of near.slice(0, Math.max(1, Math.round(size * near.length)))) {
      for (const v of variables) this.isFree[v] = 1;
      if (this.random.next() < 0.5) for (const v of block.trunk) this.isFree[v] = 1;
    }
  }

  private leastWeight(kind: Kind): number {
    if (kind === 'room') return LEAST_ROOM_WEIGHT;
    return kind === 'all' && this.isSmall ? WHOLE_WEIGHT : LEAST_WEIGHT;
  }

  /** Remembers how a neighbourhood of a kind ended: with something better, searched through in vain, or too large to. */
  remember(kind: Kind, ended: 'better' | 'searched' | 'too-large'): void {
    this.vain = ended === 'better' ? 0 : this.vain + 1;
    const size = this.size.get(kind) as number;
    const quick = this.isFar ? QUICK : 1;
    if (ended === 'searched') this.size.set(kind, Math.min(1, LARGER ** quick * size));
    if (ended === 'too-large') this.size.set(kind, Math.max(LEAST_SIZE, SMALLER ** quick * size));
    const weight = this.weight.get(kind) as number;
    this.weight.set(kind, Math.max(this.leastWeight(kind), MEMORY * weight + (ended === 'better' ? 1 - MEMORY : 0) * 4));
  }
}
