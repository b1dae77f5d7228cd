// What is wrong with an input, as data: a code, a place in the input, a sentence and an action. Shown all at once.

/** One thing wrong with an input. `line` and `column` count from 1 and are there for YAML and JSON text. */
export type InputError = {
  readonly code: string;
  /** JSON Pointer (RFC 6901) into the input, '' for the whole. */
  readonly path: string;
  readonly line?: number;
  readonly column?: number;
  readonly says: string;
  readonly doThis: string;
};

/** Outcome of reading an input: the value, or every error at once, sorted by place. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly errors: readonly InputError[] };
