// The smallest values of a scenario: whole minutes, degrees, names, clock times. Every other schema is built of these.
import * as z from 'zod';

// Most scenarios are read once by a process that then ends: compiling each schema first takes longer than reading so.
z.config({ jitless: true });

/** The longest day a scenario may plan, in minutes: three days and nights, bounds included. */
export const MAX_DAY_MINUTES = 4320;

export const RANGE_SAYS = 'the first number must not be larger than the second';
export const ID_PATTERN = /^[A-Za-z0-9][A-Za-z0-9._-]{0,59}$/;
export const CLOCK_PATTERN = /^(?:[+-][0-7]d )?(?:[01]\d|2[0-3]):[0-5]\d$/;

/** A name used to refer to a thing: letters, digits, dot, dash, underscore; 1 to 60 characters. */
export const idText = z
  .string()
  .regex(ID_PATTERN, 'use letters, digits, dots, dashes and underscores, at most 60')
  .refine((id) => !['__proto__', 'constructor', 'prototype'].includes(id), 'this word is reserved')
  .describe('Name to refer to it by: letters, digits, dots, dashes, underscores, 1 to 60.');

/** Text for people: 1 to 120 characters, no control characters. */
export const nameText = z
  .string()
  .min(1)
  .max(120)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: refusing control characters is the point.
  .regex(/^[^\u0000-\u001f\u007f]*$/, 'leave out control characters')
  .describe('Text for people, 1 to 120 letters.');

/** A local clock time on the scenario's date: "05:30", "-1d 21:30" (the evening before), "+1d 02:00". */
export const clockText = z
  .string()
  .regex(CLOCK_PATTERN, 'write a time as "05:30", or "-1d 21:30" for the day before')
  .describe('Local clock time on the date: "05:30"; "-1d 21:30" the evening before; "+1d 02:00" the night after.');

/** Whole minutes, 0 to 4320 included. */
export const wholeMinutes = z.int().min(0).max(MAX_DAY_MINUTES);

/** Whole minutes, 1 to 4320 included. */
export const someMinutes = z.int().min(1).max(MAX_DAY_MINUTES);

/** Whole minutes, or a range [at least, at most], both included. */
export const minutesOrRange = z.union([
  wholeMinutes,
  z.tuple([wholeMinutes, wholeMinutes]).refine(([low, high]) => low <= high, RANGE_SAYS),
]);

/** Whole minutes of at least one, or a range of such. */
export const someMinutesOrRange = z.union([
  someMinutes,
  z.tuple([someMinutes, someMinutes]).refine(([low, high]) => low <= high, RANGE_SAYS),
]);

/** Degrees Celsius, -40 to 500 included. */
export const celsius = z.number().min(-40).max(500);

/** Degrees Celsius, or a range [at least, at most], both included. */
export const celsiusOrRange = z.union([celsius, z.tuple([celsius, celsius]).refine(([low, high]) => low <= high, RANGE_SAYS)]);

export type MinutesOrRange = z.infer<typeof minutesOrRange>;
export type CelsiusOrRange = z.infer<typeof celsiusOrRange>;
export type Range = { readonly min: number; readonly max: number };

/** Reads a number or a [min, max] pair as a range; a number n is the range n to n. */
export function rangeOf(value: number | readonly [number, number]): Range {
  return typeof value === 'number' ? { min: value, max: value } : { min: value[0], max: value[1] };
}
