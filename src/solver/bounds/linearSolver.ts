// javascript-lp-solver behind the one call we make. Its type declarations describe an ES module as CommonJS, so it is
// loaded as CommonJS, which is what it exports at run time.
import { createRequire } from 'node:module';
import type { Model, SolverAPI } from 'javascript-lp-solver';

const solver: SolverAPI = createRequire(import.meta.url)('javascript-lp-solver');

export type LinearAnswer = {
  readonly feasible: boolean;
  readonly result: number;
  readonly values: Readonly<Record<string, number>>;
};

/** Minimises a linear or integer program. Variables at zero are absent from `values`. */
export function minimise(model: Model): LinearAnswer {
  const answer = solver.Solve(model);
  if (typeof answer !== 'object' || answer === null) throw new Error('the linear solver gave no answer');
  const values: Record<string, number> = {};
  let feasible = false;
  let result = Number.NaN;
  for (const [key, value] of Object.entries(answer)) {
    if (key === 'feasible') feasible = value === true;
    else if (key === 'result') result = Number(value);
    else if (typeof value === 'number') values[key] = value;
  }
  return { feasible, result, values };
}
