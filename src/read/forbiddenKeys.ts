// Keys no object of an input may have, because JavaScript gives them a meaning of their own; and the kinds of plain values.

export const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** What `typeof` says of a value that stands for itself. */
export const PLAIN: ReadonlySet<string> = new Set(['string', 'number', 'boolean']);
