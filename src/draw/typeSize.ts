// Type sizes in mm and line metrics of the sheet. A size is the height of the type (its em), as font-size is.

export const TYPE = {
  /** Smallest type anywhere on the sheet. */
  smallest: 2.5,
  note: 2.9,
  list: 3.6,
  /** What is read from across the room: clock, who, oven temperature. */
  far: 4.4,
  title: 6.2,
} as const;

/** Height of a line, from the top of its tallest letter to the bottom of its lowest, in parts of the type size. */
export const LINE = 1.2;

/** Distance from the top of a line to the baseline, in parts of the type size. */
export const BASELINE = 0.95;

export const INK = '#111111';
export const GREY_INK = '#444444';
export const PAPER = '#ffffff';
