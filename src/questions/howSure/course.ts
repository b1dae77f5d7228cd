// The course of a day: the moments of a plan (a step begins, a tray is out of the oven) and what each has to wait for.
// Made from a plan by courseOf.ts, run many mornings at once by courseRun.ts.
import type { Spread } from '../../model/spread.ts';

export type SpreadStep = keyof Spread;

/** Minutes that differ from morning to morning: `minutes` stated, times what a morning makes of them. */
export type Draw = {
  /** Which of the day's chances decides it; several draws may hang on one, as all trays of a slow dough do. */
  readonly chance: number;
  /** One standard deviation as a share of the minutes, 0 or more. */
  readonly spread: number;
  readonly step: SpreadStep;
  /** Id of the dough (steps of a batch) or product (steps of a tray). */
  readonly of: string;
};

/** A time: so many minutes after a moment. `draw` -1: the same every morning. `plus` never differs. */
export type Lag = { readonly from: number; readonly minutes: number; readonly draw: number; readonly plus: number };

export type Moment = {
  /** Minute of the plan. */
  readonly planned: number;
  /**
   * sheet: not before its planned minute, unless what it follows cannot wait so long.
   * follows: as soon as what it follows is done.
   * past: it has happened, at its planned minute.
   */
  readonly keeps: 'sheet' | 'follows' | 'past';
  /** It comes at none of these times' earlier. */
  readonly after: readonly Lag[];
  /** What it follows cannot wait beyond the earliest of these. */
  readonly canWaitUntil: readonly Lag[];
};

/** A place held: taken at a moment (or `lead` after it), free again at another, or a lag after it was taken. */
export type Use = {
  readonly pool: number;
  readonly takenAt: number;
  readonly lead: { readonly minutes: number; readonly draw: number };
  /** The moment that frees the place; of a bowl or bench place, the time at which the work is done. */
  readonly freed: Lag;
  /** Deck places: when the tray may come out. Counts where who loads next is also who unloads afterwards. */
  readonly couldBeFreed?: number;
};

/** A time after which dough or bread suffers until a moment comes. */
export type Watch = { readonly moment: number; readonly limit: Lag };

/** Work of a person, or a break. */
export type Piece = {
  /** The moment it begins. */
  readonly moment: number;
  readonly minutes: number;
  readonly draw: number;
  readonly isBreak: boolean;
};

export type TrayCourse = {
  readonly id: string;
  readonly product: string;
  /** The moment it is ready. */
  readonly ready: number;
  /** Where its dough stands, or its bread bakes, longer than it should. */
  readonly dough: readonly Watch[];
  readonly bread: readonly Watch[];
};

export type Course = {
  readonly moments: readonly Moment[];
  readonly draws: readonly Draw[];
  /** How many chances a morning has. */
  readonly chances: number;
  /** Room of each pool of places. */
  readonly pools: readonly { readonly id: string; readonly room: number }[];
  readonly uses: readonly Use[];
  readonly trays: readonly TrayCourse[];
  /** Pieces of each person in the order of the plan; the minute at which their hours end. */
  readonly people: readonly { readonly id: string; readonly untilMinute: number; readonly pieces: readonly Piece[] }[];
  /** The minute it is; moments that have not happened come no earlier. 0 unless the day is under way. */
  readonly now: number;
};
