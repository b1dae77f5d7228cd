// A linear program min price . x, x >= 0, its dual, and the floor a dual answer proves. Any numbers whatever give a valid
// floor by weak duality, so a wrong answer of the linear solver can weaken a bound and never falsify it.
import type { Model } from 'javascript-lp-solver';

/** The library's presolve calls some programs with a zero coefficient infeasible (version 1.0.3); it is left off. */
const PLAIN = { presolve: false };

export type Row = { readonly name: string; readonly kind: 'min' | 'max' | 'equal'; readonly bound: number };

export type Column = {
  readonly name: string;
  readonly price: number;
  readonly terms: ReadonlyMap<string, number>;
  /** No best solution needs more than this. */
  readonly atMost: number;
  readonly isInteger: boolean;
};

export type LinearProgram = { readonly rows: readonly Row[]; readonly columns: readonly Column[] };

/** The program as the solver library wants it; whole numbers asked for or not. */
export function primalModel(program: LinearProgram, isWhole: boolean): Model {
  const variables: Record<string, Record<string, number>> = {};
  const ints: Record<string, 1> = {};
  for (const { name, price, terms, isInteger } of program.columns) {
    variables[name] = { price, ...Object.fromEntries(terms) };
    if (isWhole && isInteger) ints[name] = 1;
  }
  const constraints = Object.fromEntries(program.rows.map(({ name, kind, bound }) => [name, { [kind]: bound }]));
  return {
    optimize: 'price',
    opType: 'min',
    constraints,
    variables,
    ints,
    options: { ...PLAIN, tolerance: 0 },
  };
}

/** The dual: maximise bound . y under one row a column. A row of `max` has y <= 0, one of `equal` any y: split in two. */
export function dualModel(program: LinearProgram): Model {
  const variables: Record<string, Record<string, number>> = {};
  for (const { name, kind, bound } of program.rows) {
    if (kind !== 'max') variables[`+${name}`] = { worth: bound };
    if (kind !== 'min') variables[`-${name}`] = { worth: -bound };
  }
  const constraints: Record<string, { max: number }> = {};
  for (const { name, price, terms } of program.columns) {
    constraints[name] = { max: price };
    for (const [row, coefficient] of terms) {
      const up = variables[`+${row}`];
      const down = variables[`-${row}`];
      if (up !== undefined) up[name] = coefficient;
      if (down !== undefined) down[name] = -coefficient;
    }
  }
  return { optimize: 'worth', opType: 'max', constraints, variables, options: PLAIN };
}

/** Floor that the dual values prove: their worth, less what every column they overprice could make of it. */
export function provedFloor(program: LinearProgram, dual: Readonly<Record<string, number>>): number {
  const part = (key: string): number => Math.max(0, Number.isFinite(dual[key]) ? (dual[key] as number) : 0);
  const y = new Map(
    program.rows.map(({ name, kind }) => [
      name,
      (kind === 'max' ? 0 : part(`+${name}`)) - (kind === 'min' ? 0 : part(`-${name}`)),
    ]),
  );
  let floor = program.rows.reduce((sum, { name, bound }) => sum + bound * (y.get(name) as number), 0);
  for (const { price, terms, atMost } of program.columns) {
    let charged = 0;
    for (const [row, coefficient] of terms) charged += coefficient * (y.get(row) ?? 0);
    floor -= Math.max(0, charged - price) * atMost;
  }
  return floor;
}
