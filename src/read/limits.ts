// How much the door lets in. Everything beyond is refused with a coded error, before it costs time or memory.

/** Bytes of a scenario or a written plan as text, included. */
export const MAX_TEXT_BYTES = 1_000_000;

/** Bytes of a plan in JSON that we wrote, included. */
export const MAX_PLAN_BYTES = 64_000_000;

/** Lists and objects inside one another, included. A scenario needs 7. */
export const MAX_DEPTH = 32;

/** Words, signs and blanks of a text taken apart, included. */
export const MAX_LEXEMES = 500_000;

/** Values of a scenario, repeated ones (YAML aliases) counted each time, included. */
export const MAX_VALUES = 200_000;

/** Values of a plan in JSON, included. */
export const MAX_PLAN_VALUES = 5_000_000;

/** Errors shown at once, included. */
export const MAX_ERRORS = 200;

/** Trays of a day, all products together, included. */
export const MAX_TRAYS = 2000;
