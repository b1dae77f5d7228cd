// The hatches a comparison is drawn in; they stay apart in black and white. Used by every part of it.
import { hatchId } from '../hatch.ts';

export type Mark = { readonly hatch: number; readonly colour: string };

/** What a plan was found for. */
export const FOUND: Mark = { hatch: 0, colour: '#0072b2' };
/** The day as it is. */
export const AS_IS: Mark = { hatch: 5, colour: '#56b4e9' };
/** Between what was found and what is proved to be the end. */
export const UNDECIDED: Mark = { hatch: 25, colour: '#f0e442' };
/** What is paid, or on, beyond what is used. */
export const BEYOND: Mark = { hatch: 26, colour: '#e69f00' };

export const MARKS: readonly Mark[] = [FOUND, AS_IS, UNDECIDED, BEYOND];

export function fillOf({ hatch, colour }: Mark): string {
  return `url(#${hatchId(hatch, colour)})`;
}
