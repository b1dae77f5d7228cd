// What every column of a chart page is: a head, a width it needs, and a way to draw itself.
import type { Area, TimeWindow } from './sheet.ts';
import type { SvgNode } from './svg.ts';

/** A line under a title, and what stands there when it is too long. */
export type Note = { readonly full: string; readonly short: string };

export function note(full: string, short: string = full): Note {
  return { full, short };
}

export type Family = 'people' | 'dough' | 'rooms' | 'decks' | 'shop';

export type Column = {
  readonly id: string;
  /** Columns of a family stay on one page while they fit. */
  readonly family: Family;
  readonly title: string;
  /** Stands in the head when the title does not fit; the key then gives the title. */
  readonly shortTitle: string;
  /** Smaller lines under the title for a window. */
  readonly notes: (window: TimeWindow) => readonly Note[];
  /** The narrowest it can be read at, in mm, and what it would like. */
  readonly minWidth: number;
  readonly wishWidth: number;
  /** Whether the sheet can do without it rather than spend a page on it: the list says the same. */
  readonly mayBeLeftAway: boolean;
  /** Whether it has anything to show in a window. */
  readonly isNeeded: (window: TimeWindow) => boolean;
  readonly draw: (area: Area) => readonly SvgNode[];
};
