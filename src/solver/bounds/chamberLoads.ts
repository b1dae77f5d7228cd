// Packs stays into chambers by class of state, as an integer program for javascript-lp-solver: a floor under makespan and
// changes together, and a hint at which chamber serves which class. The area of a chamber's stays, the crossings of states
// no class uses and the classes one state cannot serve bound its day (Uzsoy 1995, IJPR 33, for incompatible families).

import { NO_PATH } from '../network.ts';
import type { Chamber, ShopProblem } from '../problem.ts';
import type { Shop } from '../shop.ts';
import { type Paths, workOfStay } from './headsAndTails.ts';
import { dualModel, type LinearProgram, primalModel, provedFloor, type Row } from './linearProgram.ts';
import { solveLinear } from './linearSolver.ts';

/** Integer programs above this many variables are left to their relaxation, above the second not built at all. */
const MOST_INTEGERS = 20;
const MOST_COLUMNS = 900;

export type StayClass = {
  readonly low: number;
  readonly high: number;
  readonly chambers: readonly number[];
  readonly minLength: number;
  readonly room: number;
  readonly stays: readonly number[];
  readonly head: number;
  readonly tail: number;
};

export type LoadPacking = {
  /** Price below which no schedule that omits nothing can go, lateness not counted. */
  readonly floor: number;
  /** Whether the shares are the relaxation's because the integer program was too large or too slow. */
  readonly isRelaxed: boolean;
  /** Per class and chamber: how many of its stays the program puts there. */
  readonly share: readonly { readonly stayClass: StayClass; readonly chamber: number; readonly stays: number }[];
};

/** Outcome: a packing, or why there is none. A floor may be proved even so. */
export type PackingOutcome =
  | { readonly packing: LoadPacking }
  | { readonly packing: null; readonly because: 'too-large' | 'no-chambers' }
  | { readonly packing: null; readonly because: 'too-slow'; readonly floor: number };

/** Stays alike in range, chambers and room, with the least of their lengths, heads and tails. */
export function stayClasses(shop: Shop, paths: Paths): StayClass[] {
  const classes = new Map<string, StayClass>();
  shop.stays.forEach((stay, s) => {
    const key = `${stay.low} ${stay.high} ${stay.room} ${stay.minLength} ${stay.chambers.join(',')}`;
    const work = workOfStay(shop, paths, stay);
    // The makespan does not wait for it, so its area says nothing of the makespan.
    if (work.tail === NO_PATH) return;
    const known = classes.get(key);
    classes.set(key, {
      low: stay.low,
      high: stay.high,
      chambers: stay.chambers,
      minLength: stay.minLength,
      room: stay.room,
      stays: [...(known?.stays ?? []), s],
      head: Math.min(known?.head ?? Number.POSITIVE_INFINITY, work.head),
      tail: Math.min(known?.tail ?? Number.POSITIVE_INFINITY, work.tail),
    });
  });
  return [...classes.values()];
}

/** Gaps between states in which no class can stay: a chamber that crosses one is empty while it does. */
function deadZones(classes: readonly StayClass[]): { readonly from: number; readonly to: number }[] {
  const sorted = [...classes].sort((a, b) => a.low - b.low);
  const zones: { from: number; to: number }[] = [];
  let reach = sorted[0]?.high ?? 0;
  for (const c of sorted) {
    if (c.low > reach) zones.push({ from: reach, to: c.low });
    reach = Math.max(reach, c.high);
  }
  return zones;
}

/** Classes no two of which share a state, as many as greedy finds: each needs a state of its own. */
function disjointClasses(classes: readonly StayClass[]): StayClass[] {
  const chosen: StayClass[] = [];
  for (const c of [...classes].sort((a, b) => a.high - b.high)) {
    const last = chosen[chosen.length - 1];
    if (last === undefined || c.low > last.high) chosen.push(c);
  }
  return chosen;
}

/** Collects rows and columns by name. */
class Draft {
  private readonly rows = new Map<string, Row>();
  private readonly columns = new Map<string, { price: number; terms: Map<string, number>; atMost: number; isInteger: boolean }>();

  row(name: string, kind: Row['kind'], bound: number): void {
    this.rows.set(name, { name, kind, bound });
  }

  column(name: string, price: number, atMost: number, isInteger = false): void {
    if (!this.columns.has(name)) this.columns.set(name, { price, terms: new Map(), atMost, isInteger });
  }

  term(column: string, row: string, coefficient: number): void {
    const terms = this.columns.get(column)?.terms;
    if (terms === undefined) throw new Error(`no column ${column}`);
    terms.set(row, (terms.get(row) ?? 0) + coefficient);
  }

  program(): LinearProgram {
    return { rows: [...this.rows.values()], columns: [...this.columns].map(([name, column]) => ({ name, ...column })) };
  }
}

type Numbered = { readonly stayClass: StayClass; readonly g: number };

/** More than any makespan of a best packing. */
const MOST_MAKESPAN = 100_000;

/**
 * Columns: n_g_c stays of class g in chamber c, u_g_c whether any, x_z_c whether zone z is crossed, k_c changes, T makespan.
 */
export function programOf(problem: ShopProblem, classes: readonly StayClass[]): LinearProgram {
  const draft = new Draft();
  draft.column('T', problem.prices.makespan, MOST_MAKESPAN);
  classes.forEach((stayClass, g) => {
    draft.row(`all_${g}`, 'equal', stayClass.stays.length);
  });
  const zones = deadZones(classes);
  const disjoint = disjointClasses(classes);
  problem.chambers.forEach((chamber, c) => {
    const mine = classes.flatMap((stayClass, g) => (stayClass.chambers.includes(c) ? [{ stayClass, g }] : []));
    if (mine.length === 0) return;
    addDay(draft, chamber, c, mine);
    addCrossings(draft, chamber, c, mine, zones);
    draft.row(`states_${c}`, 'min', -1);
    draft.column(`k_${c}`, problem.prices.stateChange, classes.length);
    // One slow move may pass through the states of all, so that two states or more are only known to need one.
    const apart = mine.filter(({ stayClass }) => disjoint.includes(stayClass));
    draft.term(`k_${c}`, `states_${c}`, Math.max(1, apart.length - 1));
    for (const { g } of apart) draft.term(`u_${g}_${c}`, `states_${c}`, -1);
  });
  return draft.program();
}

/** The area of a chamber's stays fits between the least head and the least tail. */
function addDay(draft: Draft, chamber: Chamber, c: number, mine: readonly Numbered[]): void {
  const leastHead = Math.min(...mine.map(({ stayClass }) => stayClass.head));
  const leastTail = Math.min(...mine.map(({ stayClass }) => stayClass.tail));
  draft.row(`day_${c}`, 'min', leastHead + leastTail);
  draft.term('T', `day_${c}`, 1);
  for (const { stayClass, g } of mine) {
    const count = stayClass.stays.length;
    draft.column(`n_${g}_${c}`, 0, count, true);
    draft.column(`u_${g}_${c}`, 0, 1, true);
    draft.term(`n_${g}_${c}`, `all_${g}`, 1);
    draft.term(`n_${g}_${c}`, `day_${c}`, -(stayClass.minLength * stayClass.room) / chamber.room);
    draft.row(`use_${g}_${c}`, 'max', 0);
    draft.term(`n_${g}_${c}`, `use_${g}_${c}`, 1);
    draft.term(`u_${g}_${c}`, `use_${g}_${c}`, -count);
    draft.row(`one_${g}_${c}`, 'max', 1);
    draft.term(`u_${g}_${c}`, `one_${g}_${c}`, 1);
  }
}

/** A chamber that serves a class on either side of a zone crosses it, empty. */
function addCrossings(
  draft: Draft,
  chamber: Chamber,
  c: number,
  mine: readonly Numbered[],
  zones: readonly { readonly from: number; readonly to: number }[],
): void {
  const rate = Math.max(chamber.riseRate, chamber.fallRate);
  zones.forEach((zone, z) => {
    const below = mine.filter(({ stayClass }) => stayClass.high <= zone.from);
    const above = mine.filter(({ stayClass }) => stayClass.low >= zone.to);
    if (below.length === 0 || above.length === 0) return;
    draft.column(`x_${z}_${c}`, 0, 1);
    draft.term(`x_${z}_${c}`, `day_${c}`, -(zone.to - zone.from) / rate);
    for (const a of below) {
      for (const b of above) {
        const row = `cross_${z}_${c}_${a.g}_${b.g}`;
        draft.row(row, 'min', -1);
        draft.term(`x_${z}_${c}`, row, 1);
        draft.term(`u_${a.g}_${c}`, row, -1);
        draft.term(`u_${b.g}_${c}`, row, -1);
      }
    }
  });
}

/**
 * Packs the stays of a problem. The floor is the relaxation's, proved by a dual answer, and holds for every schedule that
 * omits nothing; the integer program deals stays to chambers, or the relaxation when it is too large or too slow.
 *
 * @param limitMs - milliseconds any one of the two or three solves may take, above 0.
 */
export async function packLoads(shop: Shop, paths: Paths, limitMs: number): Promise<PackingOutcome> {
  const classes = stayClasses(shop, paths);
  if (classes.length === 0) return { packing: null, because: 'no-chambers' };
  const program = programOf(shop.problem, classes);
  if (program.columns.length > MOST_COLUMNS) return { packing: null, because: 'too-large' };
  const asksWhole = program.columns.filter((column) => column.isInteger).length <= MOST_INTEGERS;
  // Both at once: whoever is busy meanwhile does not keep the second waiting.
  const [dual, first] = await Promise.all([
    solveLinear(dualModel(program), limitMs),
    solveLinear(primalModel(program, asksWhole), limitMs),
  ]);
  const floor = dual === null ? 0 : Math.max(0, provedFloor(program, dual.values));
  const isWhole = asksWhole && first?.feasible === true;
  const answer = isWhole || !asksWhole ? first : await solveLinear(primalModel(program, false), limitMs);
  if (answer?.feasible !== true) return { packing: null, because: 'too-slow', floor };
  const share = classes.flatMap((stayClass, g) =>
    stayClass.chambers.map((chamber) => ({ stayClass, chamber, stays: answer.values[`n_${g}_${chamber}`] ?? 0 })),
  );
  return { packing: { floor, isRelaxed: !isWhole, share } };
}
