// The price of a schedule as one variable of a model: makespan, or the span from the first mark, lateness by family, changes, moved
// tasks, and what is left out where there is a choice. Used by shopModel.ts.
import type { ShopProblem } from '../problem.ts';
import type { Term } from './engine.ts';
import { isFalse, isTrue, type Literal } from './literal.ts';
import type { ModelDraft } from './modelDraft.ts';

/** `isIn`: what is true when its unit is planned; null: it always is. */
type Mark = { readonly variable: number; readonly offset: number; readonly isIn: Literal | null };

/** `total`: the price times the model's scale. `first`: at most every first mark; -1 where that has no price. */
export type PriceModel = { readonly total: number; readonly first: number };

function markAt(
  model: ModelDraft,
  mark: { readonly task: number; readonly edge: 'start' | 'end'; readonly offset: number },
): Mark {
  const { network } = model.shop;
  const isStart = mark.edge === 'start';
  return {
    variable: (isStart ? network.startVar : network.endVar)[mark.task] as number,
    offset: ((isStart ? network.startOff : network.endOff)[mark.task] as number) + mark.offset,
    isIn: model.presenceOf(mark.task),
  };
}

/** Adds the price of the planned units to a model. `omissions`: the prices of those that may be left out. */
export function addPrice(
  model: ModelDraft,
  isPlanned: (unit: number) => boolean,
  changes: readonly number[],
  moves: readonly Term[],
  omissions: readonly Term[],
): PriceModel {
  const { problem } = model.shop;
  const { makespan, stateChange } = problem.prices;
  const ready = problem.units.map((unit, u) => (unit.ready === null || !isPlanned(u) ? null : markAt(model, unit.ready)));
  const terms: Term[] = [];
  let first = -1;
  if (makespan > 0) {
    const end = model.engine.addVariable(0, problem.horizon);
    for (const mark of ready) if (mark !== null) model.engine.addArc(mark.variable, end, mark.offset, mark.isIn);
    terms.push({ variable: end, weight: weight(model, makespan) });
    first = addFirst(model);
    if (first >= 0) terms.push({ variable: first, weight: -weight(model, makespan) });
    if (first >= 0 && omissions.length > 0) model.engine.addArc(first, end, 0);
  }
  problem.families.forEach((family, f) => {
    if (family.latePrice === 0) return;
    const marks = ready.filter((mark, u): mark is Mark => mark !== null && problem.units[u]?.family === f);
    terms.push(...addLateness(model, family, marks));
  });
  if (stateChange > 0) for (const variable of changes) terms.push({ variable, weight: weight(model, stateChange) });
  terms.push(...moves, ...omissions);
  return { total: totalOf(model, terms), first };
}

function weight(model: ModelDraft, price: number): number {
  return Math.round(price * model.scale);
}

/** A variable that is at most every first mark, where the span counts from there; -1 otherwise. */
function addFirst(model: ModelDraft): number {
  const { problem } = model.shop;
  const planned = problem.firstMarks.filter(({ task }) => model.plannedTask[task] === 1);
  if (!problem.prices.fromFirstMark || planned.length === 0) return -1;
  const first = model.engine.addVariable(0, problem.horizon);
  for (const mark of planned) {
    const { variable, offset, isIn } = markAt(model, mark);
    model.engine.addArc(first, variable, -offset, isIn);
  }
  return first;
}

function totalOf(model: ModelDraft, terms: readonly Term[]): number {
  const { engine } = model;
  const [only] = terms;
  if (only !== undefined && terms.length === 1 && only.weight === 1) return only.variable;
  const ends = terms.map((term) => [term.weight * engine.max(term.variable), term.weight * engine.min(term.variable)]);
  const most = ends.reduce((sum, pair) => sum + Math.max(...pair), 0);
  const least = ends.reduce((sum, pair) => sum + Math.min(...pair), 0);
  const total = engine.addVariable(Math.min(0, least), Math.max(0, most));
  engine.addSum(total, terms);
  return total;
}

/** Each mark takes a due time, each due time at most one mark: what is over it is late. */
function addLateness(model: ModelDraft, family: ShopProblem['families'][number], marks: readonly Mark[]): Term[] {
  const { engine } = model;
  const levels = new Map<number, number>();
  for (const due of family.dues.slice(0, marks.length)) levels.set(due, (levels.get(due) ?? 0) + 1);
  const taken = [...levels].map(([due, room]) => ({ due, room, flags: [] as number[] }));
  // A due time before time 0 is missed whatever is done.
  const missed = Math.max(0, ...taken.map(({ due }) => -due));
  const terms = marks.map((mark) => {
    const late = engine.addVariable(0, Math.max(0, engine.max(mark.variable) + mark.offset + missed));
    const flags = taken.length === 1 ? [] : taken.map(() => model.addFlag());
    if (flags.length > 0) model.exactlyOne(flags, mark.isIn);
    taken.forEach((level, l) => {
      const flag = flags[l];
      if (flag !== undefined) level.flags.push(flag);
      engine.addArc(mark.variable, late, mark.offset - level.due, flag === undefined ? mark.isIn : isTrue(flag));
    });
    return { variable: late, weight: weight(model, family.latePrice) };
  });
  for (const { room, flags } of taken) {
    if (flags.length <= room) continue;
    const count = engine.addVariable(0, room);
    const each = flags.map((variable) => ({ variable, weight: 1 }));
    engine.addSum(count, each);
  }
  if (marks.some(({ isIn }) => isIn !== null)) fillInOrder(model, taken);
  return terms;
}

/** Where units may be left out: a due time is taken only when all of those before it are. */
function fillInOrder(model: ModelDraft, levels: readonly { readonly room: number; readonly flags: readonly number[] }[]): void {
  const { engine } = model;
  let before: readonly number[] = [];
  let room = 0;
  for (const level of levels) {
    if (room > 0 && level.flags.length > 0) {
      const isTaken = model.addFlag();
      for (const flag of level.flags) model.clause(isFalse(flag), isTrue(isTaken));
      const spare = engine.addVariable(0, 0);
      const terms = [{ variable: isTaken, weight: room }, ...before.map((variable) => ({ variable, weight: -1 }))];
      engine.addSum(spare, terms);
    }
    before = [...before, ...level.flags];
    room += level.room;
  }
}
