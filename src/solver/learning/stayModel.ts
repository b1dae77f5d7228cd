// Stays in chambers as part of a model: which chamber, room, and for stays that share no state which comes first, with the
// time the state needs to move between. Pairs suffice: a state can pass through all stays of a chamber exactly when it can
// pass through each two of them, because the states reachable at an instant are an interval (Helly's theorem on a line).
import type { Layout } from '../layout.ts';
import type { Chamber } from '../problem.ts';
import type { Shop, StayUse } from '../shop.ts';
import { gapBetween, rangeIn, reachedAt } from '../stateGaps.ts';
import type { CrowdUse } from './engine.ts';
import { atLeast, isFalse, isTrue, type Literal, negated } from './literal.ts';
import type { ModelDraft } from './modelDraft.ts';

export type StayModel = {
  /** Per stay: a yes-or-no variable for each of its chambers; null where there is no choice, or no stay. */
  readonly flags: readonly (readonly number[] | null)[];
  /** Variables for the changes of state, one a chamber; none when they have no price. */
  readonly changes: readonly number[];
  read(layout: Layout): void;
  aimAt(layout: Layout): void;
};

/** How far changes of state have come at a stay: counted upwards and downwards, or both in one. */
type Level = { readonly up: number; readonly down: number };

/**
 * Adds the stays of a shop to a model. Changes of state are never counted too high, unless `guessesChanges`: one slow move may
 * pass through the ranges of several stays while they last, so that only turning back is sure to need another. The guess is one
 * change for each range left behind, which is what most schedules need.
 */
export function chambersOf(
  model: ModelDraft,
  shop: Shop,
  isPlanned: (stay: number) => boolean,
  guessesChanges: boolean,
): StayModel {
  const { problem, stays } = shop;
  const presenceOf = (s: number): Literal | null => model.presenceOf((stays[s] as StayUse).task);
  const flags = stays.map((stay, s) => {
    if (!isPlanned(s) || stay.chambers.length === 1) return null;
    const list = stay.chambers.map(() => model.addFlag());
    model.exactlyOne(list, presenceOf(s));
    return list;
  });
  const whenIn = (s: number, c: number): Literal | null => {
    const list = flags[s] ?? null;
    return list === null ? presenceOf(s) : isTrue(list[(stays[s] as StayUse).chambers.indexOf(c)] as number);
  };
  const planned = stays.flatMap((_, s) => (isPlanned(s) ? [s] : []));
  const use = (s: number, condition: Literal | null): CrowdUse => {
    const stay = stays[s] as StayUse;
    return {
      from: stay.startVar,
      fromOff: stay.startOff,
      until: stay.endVar,
      untilOff: stay.endOff,
      amount: stay.room,
      length: stay.minLength,
      condition,
    };
  };
  problem.chambers.forEach((chamber, c) => {
    const mine = planned.filter((s) => (stays[s] as StayUse).chambers.includes(c));
    for (const s of mine) {
      const stay = stays[s] as StayUse;
      const inside = whenIn(s, c);
      const soonest = atLeast(stay.startVar, reachedAt(chamber, rangeIn(chamber, stay)) - stay.startOff);
      model.clause(...(inside === null ? [] : [negated(inside)]), soonest);
    }
    model.crowd(
      model.capacityOf([chamber]),
      mine.map((s) => use(s, whenIn(s, c))),
    );
  });
  if (problem.chambers.length > 1 && planned.length > 0)
    model.crowd(
      model.capacityOf(problem.chambers),
      planned.map((s) => use(s, presenceOf(s))),
    );
  const levels =
    problem.prices.stateChange > 0 ? new Map(planned.map((s) => [s, levelOf(model, planned.length, guessesChanges)])) : null;
  const pairs = new PairOrder(model, shop, whenIn, levels);
  planned.forEach((a, i) => {
    for (const b of planned.slice(i + 1)) pairs.add(a, b);
  });
  return {
    flags,
    changes: levels === null ? [] : changesOf(model, shop, planned, whenIn, levels),
    ...transfer(model, shop, flags),
  };
}

function levelOf(model: ModelDraft, most: number, guessesChanges: boolean): Level {
  const up = model.engine.addVariable(0, most);
  return { up, down: guessesChanges ? up : model.engine.addVariable(0, most) };
}

/** Time from a first stay to a second, and from the second to the first, in some chambers. */
type Gap = { readonly ab: number; readonly ba: number; readonly chambers: number[] };

class PairOrder {
  private readonly model: ModelDraft;
  private readonly shop: Shop;
  private readonly whenIn: (stay: number, chamber: number) => Literal | null;
  private readonly levels: ReadonlyMap<number, Level> | null;
  /** Stays alike in range and chambers are of one kind; a stay of each. */
  private readonly kinds: StayUse[] = [];
  private readonly kindOf: readonly number[];
  private readonly gaps: (readonly Gap[] | undefined)[] = [];

  constructor(
    model: ModelDraft,
    shop: Shop,
    whenIn: (stay: number, chamber: number) => Literal | null,
    levels: ReadonlyMap<number, Level> | null,
  ) {
    this.model = model;
    this.shop = shop;
    this.whenIn = whenIn;
    this.levels = levels;
    const kindOfLook = new Map<string, number>();
    this.kindOf = shop.stays.map((stay) => {
      const look = `${stay.low} ${stay.high} ${stay.chambers.join(',')}`;
      const kind = kindOfLook.get(look) ?? this.kinds.push(stay) - 1;
      kindOfLook.set(look, kind);
      return kind;
    });
  }

  /** Orders two stays in every chamber in which they share no state. */
  add(a: number, b: number): void {
    for (const { ab, ba, chambers } of this.gapsOf(this.kindOf[a] as number, this.kindOf[b] as number))
      this.order(a, b, ab, ba, chambers);
  }

  /** The gaps between stays of two kinds, each with the chambers in which it is so long; none where they share a state. */
  private gapsOf(first: number, second: number): readonly Gap[] {
    const at = first * this.kinds.length + second;
    const known = this.gaps[at];
    if (known !== undefined) return known;
    const a = this.kinds[first] as StayUse;
    const b = this.kinds[second] as StayUse;
    const found: Gap[] = [];
    for (const c of a.chambers) {
      if (!b.chambers.includes(c)) continue;
      const chamber = this.shop.problem.chambers[c] as Chamber;
      const ab = gapBetween(chamber, rangeIn(chamber, a), rangeIn(chamber, b));
      const ba = gapBetween(chamber, rangeIn(chamber, b), rangeIn(chamber, a));
      if (ab === 0 && ba === 0) continue;
      const same = found.find((gap) => gap.ab === ab && gap.ba === ba);
      if (same === undefined) found.push({ ab, ba, chambers: [c] });
      else same.chambers.push(c);
    }
    this.gaps[at] = found;
    return found;
  }

  private order(a: number, b: number, ab: number, ba: number, chambers: readonly number[]): void {
    const stayA = this.shop.stays[a] as StayUse;
    const stayB = this.shop.stays[b] as StayUse;
    const first = this.model.orderFlag(stayA.endVar, stayB.startVar, stayA.endOff + ab - stayB.startOff);
    const second = this.model.orderFlag(stayB.endVar, stayA.startVar, stayB.endOff + ba - stayA.startOff);
    for (const c of chambers) {
      const apart: Literal[] = [];
      const insideA = this.whenIn(a, c);
      const insideB = this.whenIn(b, c);
      if (insideA !== null) apart.push(negated(insideA));
      if (insideB !== null) apart.push(negated(insideB));
      this.model.clause(...apart, isTrue(first), isTrue(second));
      this.level(a, b, first, second, apart);
    }
  }

  /** Where changes have a price: the later of two stays in a chamber stands one change further on than the earlier one did
   * when its state last went the other way. */
  private level(a: number, b: number, first: number, second: number, apart: readonly Literal[]): void {
    const levelA = this.levels?.get(a);
    const levelB = this.levels?.get(b);
    if (levelA === undefined || levelB === undefined) return;
    const { stays } = this.shop;
    const stayA = stays[a] as StayUse;
    const stayB = stays[b] as StayUse;
    const both = this.model.addFlag();
    this.model.clause(...apart, isTrue(both));
    const ab = this.model.addFlag();
    const ba = this.model.addFlag();
    this.model.clause(isFalse(both), isFalse(first), isTrue(ab));
    this.model.clause(isFalse(both), isFalse(second), isTrue(ba));
    const isRise = stayB.low > stayA.high;
    const [fromA, toB] = isRise ? [levelA.down, levelB.up] : [levelA.up, levelB.down];
    const [fromB, toA] = isRise ? [levelB.up, levelA.down] : [levelB.down, levelA.up];
    this.model.engine.addArc(fromA, toB, 1, isTrue(ab));
    this.model.engine.addArc(fromB, toA, 1, isTrue(ba));
  }
}

function changesOf(
  model: ModelDraft,
  shop: Shop,
  planned: readonly number[],
  whenIn: (stay: number, chamber: number) => Literal | null,
  levels: ReadonlyMap<number, Level>,
): number[] {
  return shop.problem.chambers.map((_, c) => {
    const changes = model.engine.addVariable(0, planned.length);
    for (const s of planned) {
      if (!(shop.stays[s] as StayUse).chambers.includes(c)) continue;
      const { up, down } = levels.get(s) as Level;
      model.engine.addArc(up, changes, 0, whenIn(s, c));
      if (down !== up) model.engine.addArc(down, changes, 0, whenIn(s, c));
    }
    return changes;
  });
}

function transfer(model: ModelDraft, shop: Shop, flags: StayModel['flags']): Pick<StayModel, 'read' | 'aimAt'> {
  const { engine } = model;
  return {
    read: (layout) => {
      shop.stays.forEach((stay, s) => {
        if ((layout.start[stay.task] as number) < 0) return;
        const list = flags[s] ?? null;
        const chosen = list === null ? 0 : list.findIndex((flag) => engine.min(flag) === 1);
        layout.chamber[s] = stay.chambers[chosen] as number;
      });
    },
    aimAt: (layout) => {
      shop.stays.forEach((stay, s) => {
        flags[s]?.forEach((flag, i) => {
          model.engine.target[flag] = stay.chambers[i] === layout.chamber[s] ? 1 : 0;
        });
      });
    },
  };
}
