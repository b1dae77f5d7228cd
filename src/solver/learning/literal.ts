// Literals of the learning solver: a side of a variable's bounds and how far it must have risen.

export type Literal = { readonly side: number; readonly low: number };

/** Of a yes-or-no variable. */
export const isTrue = (variable: number): Literal => ({ side: 2 * variable, low: 1 });
export const isFalse = (variable: number): Literal => ({ side: 2 * variable + 1, low: 0 });

export const atLeast = (variable: number, value: number): Literal => ({ side: 2 * variable, low: value });
export const atMost = (variable: number, value: number): Literal => ({ side: 2 * variable + 1, low: -value });

/** What is true when a literal is false. */
export const negated = ({ side, low }: Literal): Literal => ({ side: side ^ 1, low: 1 - low });
