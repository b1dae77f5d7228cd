// Packs stays into chambers by class of state, as an integer program for javascript-lp-solver: a floor under makespan and
// changes together, and a hint at which chamber serves which class. The area of a chamber's stays, the crossings of states
// no class uses and the classes one state cannot serve bound its day (Uzsoy 1995, IJPR 33, for incompatible families).
import type { ShopProblem } from '../problem.ts';
import type { Shop } from '../shop.ts';
import { type Paths, workOfStay } from './headsAndTails.ts';
import { type LinearAnswer, minimise } from './linearSolver.ts';

/** Integer programs above this many variables are left to their relaxation, above the second not built at all. */
const MOST_INTEGERS = 28;
const MOST_VARIABLES = 900;
const MOST_MILLISECONDS = 2000;

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
  readonly price: number;
  readonly makespan: number;
  /** Whether the shares are the relaxation's because the integer program was too large or too slow. */
  readonly isRelaxed: boolean;
  /** Per class and chamber: how many of its stays the program puts there. */
  readonly share: readonly { readonly stayClass: StayClass; readonly chamber: number; readonly stays: number }[];
};

/** Outcome: a packing, or why there is none. */
export type PackingOutcome =
  | { readonly packing: LoadPacking }
  | { readonly packing: null; readonly because: 'too-large' | 'no-answer' | 'no-chambers' };

/** Stays alike in range, chambers and room, with the least of their lengths, heads and tails. */
export function stayClasses(shop: Shop, paths: Paths): StayClass[] {
  const classes = new Map<string, StayClass>();
  shop.stays.forEach((stay, s) => {
    const key = `${stay.low} ${stay.high} ${stay.room} ${stay.minLength} ${stay.chambers.join(',')}`;
    const work = workOfStay(shop, paths, stay);
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

type Row = Record<string, number>;
type Program = {
  readonly constraints: Record<string, { min?: number; max?: number; equal?: number }>;
  readonly variables: Record<string, Row>;
  readonly integers: string[];
};

/** Variables: n_g_c stays of class g in chamber c, u_g_c whether any, x_z_c whether zone z is crossed, k_c changes, T makespan. */
function programOf(problem: ShopProblem, classes: readonly StayClass[]): Program {
  const variables: Record<string, Row> = { T: { price: problem.prices.makespan } };
  const constraints: Program['constraints'] = {};
  const integers: string[] = [];
  const bind = (name: string, row: string, coefficient: number): void => {
    const terms = variables[name] ?? { price: 0 };
    terms[row] = (terms[row] ?? 0) + coefficient;
    variables[name] = terms;
  };
  const zones = deadZones(classes);
  const disjoint = disjointClasses(classes);
  classes.forEach((stayClass, g) => {
    constraints[`all_${g}`] = { equal: stayClass.stays.length };
    for (const c of stayClass.chambers) bind(`n_${g}_${c}`, `all_${g}`, 1);
  });
  problem.chambers.forEach((chamber, c) => {
    const mine = classes.flatMap((stayClass, g) => (stayClass.chambers.includes(c) ? [{ stayClass, g }] : []));
    if (mine.length === 0) return;
    const margin =
      Math.min(...mine.map(({ stayClass }) => stayClass.head)) + Math.min(...mine.map(({ stayClass }) => stayClass.tail));
    constraints[`day_${c}`] = { min: margin };
    bind('T', `day_${c}`, 1);
    for (const { stayClass, g } of mine) {
      bind(`n_${g}_${c}`, `day_${c}`, -(stayClass.minLength * stayClass.room) / chamber.room);
      constraints[`use_${g}_${c}`] = { max: 0 };
      bind(`n_${g}_${c}`, `use_${g}_${c}`, 1);
      bind(`u_${g}_${c}`, `use_${g}_${c}`, -stayClass.stays.length);
      constraints[`one_${g}_${c}`] = { max: 1 };
      bind(`u_${g}_${c}`, `one_${g}_${c}`, 1);
      integers.push(`n_${g}_${c}`, `u_${g}_${c}`);
    }
    zones.forEach((zone, z) => {
      const rate = Math.max(chamber.riseRate, chamber.fallRate);
      for (const a of mine.filter(({ stayClass }) => stayClass.high <= zone.from)) {
        for (const b of mine.filter(({ stayClass }) => stayClass.low >= zone.to)) {
          constraints[`cross_${z}_${c}_${a.g}_${b.g}`] = { min: -1 };
          bind(`x_${z}_${c}`, `cross_${z}_${c}_${a.g}_${b.g}`, 1);
          bind(`u_${a.g}_${c}`, `cross_${z}_${c}_${a.g}_${b.g}`, -1);
          bind(`u_${b.g}_${c}`, `cross_${z}_${c}_${a.g}_${b.g}`, -1);
        }
      }
      if (variables[`x_${z}_${c}`] !== undefined) bind(`x_${z}_${c}`, `day_${c}`, -(zone.to - zone.from) / rate);
    });
    constraints[`states_${c}`] = { min: -1 };
    variables[`k_${c}`] = { price: problem.prices.stateChange, [`states_${c}`]: 1 };
    for (const { stayClass, g } of mine) if (disjoint.includes(stayClass)) bind(`u_${g}_${c}`, `states_${c}`, -1);
  });
  return { constraints, variables, integers };
}

function solveProgram(program: Program, integers: readonly string[]): LinearAnswer {
  const ints: Record<string, 1> = {};
  for (const name of integers) ints[name] = 1;
  return minimise({
    optimize: 'price',
    opType: 'min',
    constraints: program.constraints,
    variables: program.variables,
    ints,
    options: { timeout: MOST_MILLISECONDS, tolerance: 0 },
  });
}

/**
 * Packs the stays of a problem. The floor is the relaxation's, valid for every schedule that omits nothing; the integer
 * program deals stays to chambers. When it is too large or too slow the relaxation's shares serve instead.
 *
 * @param milliseconds - a clock, so that a search cut off by its time limit is told from a finished one.
 */
export function packLoads(shop: Shop, paths: Paths, milliseconds: () => number): PackingOutcome {
  const classes = stayClasses(shop, paths);
  if (classes.length === 0) return { packing: null, because: 'no-chambers' };
  const program = programOf(shop.problem, classes);
  if (Object.keys(program.variables).length > MOST_VARIABLES) return { packing: null, because: 'too-large' };
  const relaxed = solveProgram(program, []);
  if (!relaxed.feasible) return { packing: null, because: 'no-answer' };
  const startedAt = milliseconds();
  const whole = program.integers.length <= MOST_INTEGERS ? solveProgram(program, program.integers) : null;
  const isWhole = whole?.feasible === true && milliseconds() - startedAt < MOST_MILLISECONDS * 0.9;
  const answer = isWhole && whole !== null ? whole : relaxed;
  const share = classes.flatMap((stayClass, g) =>
    stayClass.chambers.map((chamber) => ({ stayClass, chamber, stays: answer.values[`n_${g}_${chamber}`] ?? 0 })),
  );
  const makespan = Math.ceil((relaxed.values.T ?? 0) - 1e-6);
  return { packing: { price: relaxed.result, makespan, isRelaxed: !isWhole, share } };
}
