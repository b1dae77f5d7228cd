// One thing a schema found wrong, with what a sentence about it needs.
import type * as z from 'zod';
import type { Segment } from './pointer.ts';

export type Issue = z.core.$ZodIssue;

/** One issue of the schema with everything a sentence needs: its place, the value there, and the place in words. */
export type Wrong = {
  readonly issue: Issue;
  readonly path: readonly Segment[];
  readonly at: string;
  readonly value: unknown;
  readonly place: string;
};
