// The kinds of generated scenarios, and what each asks of its bakehouse. Used by the generator and the runner.

export const KINDS = ['plain', 'tight-shelves', 'tight-bench', 'one-person', 'many-temperatures', 'due-times'] as const;
export type Kind = (typeof KINDS)[number];

export type Traits = {
  /** Proofer shelves and bench places, as shares of the usual number. */
  readonly shelfShare: number;
  readonly benchShare: number;
  /** People; null: as many as the trays call for. */
  readonly people: number | null;
  /** Shortest and longest minutes a tray is shaped, both included. */
  readonly shapeMinutes: readonly [number, number];
  /** Middles of the ranges bakes are drawn from, in C. */
  readonly bakesAtC: readonly number[];
  readonly hasDueTimes: boolean;
};

const FEW_TEMPERATURES = [180, 200, 225, 250];
/** Ten degrees wide each: neighbours share a temperature, others do not. */
const MANY_TEMPERATURES = [160, 170, 180, 188, 196, 204, 212, 220, 228, 236, 244, 252];

const USUAL: Traits = {
  shelfShare: 1,
  benchShare: 1,
  people: null,
  shapeMinutes: [5, 12],
  bakesAtC: FEW_TEMPERATURES,
  hasDueTimes: false,
};

export const TRAITS: Readonly<Record<Kind, Traits>> = {
  plain: USUAL,
  'tight-shelves': { ...USUAL, shelfShare: 0.6 },
  'tight-bench': { ...USUAL, benchShare: 0.6, shapeMinutes: [9, 16] },
  'one-person': { ...USUAL, people: 1, shapeMinutes: [4, 9] },
  'many-temperatures': { ...USUAL, bakesAtC: MANY_TEMPERATURES },
  'due-times': { ...USUAL, hasDueTimes: true },
};
