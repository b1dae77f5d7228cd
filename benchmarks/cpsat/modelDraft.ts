// A CP-SAT model in the making: variables, linear rows, intervals, capacities. Knows nothing of shops.
import type { Affine, Constraint, Model } from './proto.ts';

/** A sum of affine terms. */
export type Term = readonly [expression: Affine, coefficient: number];

export const constant = (value: number): Affine => ({ vars: [], coeffs: [], offset: value });
export const plus = (expression: Affine, offset: number): Affine => ({ ...expression, offset: expression.offset + offset });
export const not = (literal: number): number => -literal - 1;

/** A literal as 0 or 1: of the opposite of v it is 1 - v. */
export const truth = (literal: number): Affine =>
  literal >= 0 ? { vars: [literal], coeffs: [1], offset: 0 } : { vars: [not(literal)], coeffs: [-1], offset: 1 };

export class ModelDraft {
  private readonly variables: { readonly domain: readonly [number, number] }[] = [];
  private readonly constraints: Constraint[] = [];
  private readonly price = new Map<number, number>();
  private priceOffset = 0;

  private add(constraint: Constraint, when: readonly number[]): number {
    this.constraints.push(when.length === 0 ? constraint : { ...constraint, enforcementLiteral: when });
    return this.constraints.length - 1;
  }

  /** A whole number from low to high, both included. */
  variable(low: number, high: number): Affine {
    this.variables.push({ domain: [low, high] });
    return { vars: [this.variables.length - 1], coeffs: [1], offset: 0 };
  }

  literal(): number {
    this.variables.push({ domain: [0, 1] });
    return this.variables.length - 1;
  }

  /** low <= sum of the terms <= high. */
  between(terms: readonly Term[], low: number, high: number, when: readonly number[] = []): void {
    const sums = new Map<number, number>();
    let offset = 0;
    for (const [{ vars, coeffs, offset: own }, coefficient] of terms) {
      offset += own * coefficient;
      vars.forEach((v, i) => {
        sums.set(v, (sums.get(v) ?? 0) + (coeffs[i] ?? 0) * coefficient);
      });
    }
    this.add({ linear: { vars: [...sums.keys()], coeffs: [...sums.values()], domain: [low - offset, high - offset] } }, when);
  }

  /** later - earlier >= lag. */
  lag(earlier: Affine, later: Affine, lag: number, most: number, when: readonly number[] = []): void {
    this.between(
      [
        [later, 1],
        [earlier, -1],
      ],
      lag,
      most,
      when,
    );
  }

  oneOf(literals: readonly number[], when: readonly number[] = []): void {
    if (when.length === 0) this.add({ exactlyOne: { literals } }, []);
    else
      this.between(
        literals.map((literal) => [truth(literal), 1]),
        1,
        1,
        when,
      );
  }

  anyOf(literals: readonly number[], when: readonly number[] = []): void {
    this.add({ boolOr: { literals } }, when);
  }

  interval(start: Affine, size: Affine, end: Affine, when: readonly number[] = []): number {
    return this.add({ interval: { start, size, end } }, when);
  }

  /** No more than `capacity` of the amounts at once. */
  capacity(capacity: number, uses: readonly { readonly interval: number; readonly amount: number }[]): void {
    const intervals = uses.map((use) => use.interval);
    if (uses.every((use) => 2 * use.amount > capacity && use.amount <= capacity)) this.add({ noOverlap: { intervals } }, []);
    else {
      const demands = uses.map((use) => constant(use.amount));
      this.add({ cumulative: { capacity: constant(capacity), intervals, demands } }, []);
    }
  }

  /** Adds to what is minimised. */
  pay({ vars, coeffs, offset }: Affine, coefficient: number): void {
    this.priceOffset += offset * coefficient;
    vars.forEach((v, i) => {
      this.price.set(v, (this.price.get(v) ?? 0) + (coeffs[i] ?? 0) * coefficient);
    });
  }

  model(): Model {
    const { variables, constraints } = this;
    return {
      variables,
      constraints,
      objective: { vars: [...this.price.keys()], coeffs: [...this.price.values()], offset: this.priceOffset },
    };
  }
}

/** The value of an expression in a solution. */
export function amountOf({ vars, coeffs, offset }: Affine, solution: readonly number[]): number {
  return vars.reduce((total, v, i) => total + (coeffs[i] ?? 0) * (solution[v] ?? Number.NaN), offset);
}

export function isTrue(literal: number, solution: readonly number[]): boolean {
  return amountOf(truth(literal), solution) === 1;
}
