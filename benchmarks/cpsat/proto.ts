// The part of CP-SAT's model format (cp_model.proto of OR-Tools, field names as or-tools-wasm 0.9.1 types them) that our model uses.
// A literal is a variable of domain 0 to 1; -v - 1 is the opposite of literal v.

/** A constant, or a multiple of one variable and a constant: what intervals are made of. */
export type Affine = { readonly vars: readonly number[]; readonly coeffs: readonly number[]; readonly offset: number };

export type Constraint = {
  /** Holds only when all of these do; none: always. */
  readonly enforcementLiteral?: readonly number[];
  readonly linear?: { readonly vars: readonly number[]; readonly coeffs: readonly number[]; readonly domain: readonly number[] };
  readonly boolOr?: { readonly literals: readonly number[] };
  readonly exactlyOne?: { readonly literals: readonly number[] };
  readonly interval?: { readonly start: Affine; readonly size: Affine; readonly end: Affine };
  readonly noOverlap?: { readonly intervals: readonly number[] };
  readonly cumulative?: {
    readonly capacity: Affine;
    readonly intervals: readonly number[];
    readonly demands: readonly Affine[];
  };
};

export type Model = {
  readonly variables: readonly { readonly domain: readonly [number, number] }[];
  readonly constraints: readonly Constraint[];
  readonly objective: { readonly vars: readonly number[]; readonly coeffs: readonly number[]; readonly offset: number };
};
