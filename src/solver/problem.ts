// The neutral scheduling problem: tasks in time, links with lags, pools of capacity, chambers with a state.
// It has never heard of bread; a job shop or a project with maximum time lags is such a problem too.

/** Which end of a task. */
export type Edge = 'start' | 'end';

/** Use of a pool during [from, until): each an edge of the task plus an offset in time units. */
export type Demand = {
  /** Pools that may serve it, one of which does for its whole length. At least one. */
  readonly pools: readonly number[];
  readonly amount: number;
  readonly from: { readonly edge: Edge; readonly offset: number };
  readonly until: { readonly edge: Edge; readonly offset: number };
  /** In a chamber that takes loads together: served once for the whole load. */
  readonly oncePerLoad: boolean;
  /** How long the task lasts when each of `pools`, in their order, serves it. Absent: that does not depend on the pool. */
  readonly durations?: readonly number[];
};

/** A stay in one chamber from the task's start to its end; the chamber's state stays within [low, high] throughout. */
export type Stay = {
  readonly chambers: readonly number[];
  readonly low: number;
  readonly high: number;
  /** Room it takes, 1 or more. */
  readonly room: number;
  /** Work just before and after the stay. Only stays with the same share a load, and the work is then done once. */
  readonly before: number;
  readonly after: number;
};

export type ShopTask = {
  readonly id: string;
  /** Shortest and longest duration, both included. */
  readonly minDuration: number;
  readonly maxDuration: number;
  /** Earliest start, included, and latest end, included. */
  readonly earliestStart: number;
  readonly latestEnd: number;
  /** Latest start, included. Absent: whenever it can still end in time. */
  readonly latestStart?: number;
  readonly demands: readonly Demand[];
  readonly stay?: Stay;
};

/** `to` edge lies at least `min` and at most `max` (Infinity: no limit) after `from` edge. */
export type Link = {
  readonly from: number;
  readonly fromEdge: Edge;
  readonly to: number;
  readonly toEdge: Edge;
  readonly min: number;
  readonly max: number;
};

/**
 * The first member begins when `after` ends, or up to `wait` later; each other begins within `within` of the first.
 * A member begins `lead` before its task starts.
 */
export type Burst = {
  readonly after: number;
  readonly members: readonly { readonly task: number; readonly lead: number }[];
  readonly within: number;
  readonly wait: number;
};

/** Capacity over time: `capacity` inside the open spans, 0 outside. Spans are half-open and sorted. */
export type Pool = { readonly id: string; readonly capacity: number; readonly open: readonly (readonly [number, number])[] };

/**
 * Holds compatible stays at one state; the state moves no faster than the rates and starts at `initial` at time 0.
 * `together`: stays that overlap begin and end together, and their `oncePerLoad` demands are served once.
 */
export type Chamber = {
  readonly id: string;
  readonly room: number;
  readonly min: number;
  readonly max: number;
  readonly initial: number;
  readonly riseRate: number;
  readonly fallRate: number;
  readonly together: boolean;
  /** Whether it has been at a state of use before time 0: then its first move is a change as well. Default: no. */
  readonly isSettled?: boolean;
  /** A move under way at time 0: from `initial` on, even, to a state at a time above 0. To go on with it is no change. Default: none. */
  readonly underWay?: { readonly end: number; readonly to: number };
};

/** Tasks that are planned or omitted as one. A unit with a parent needs the parent; a parent with no child left is omitted. */
export type Unit = {
  readonly id: string;
  readonly tasks: readonly number[];
  readonly parent: number | null;
  /** Price of omitting it; Infinity: never. A parent's own price is 0. */
  readonly omissionPrice: number;
  /** The edge and offset at which the unit is ready; null when its readiness does not count. */
  readonly ready: { readonly task: number; readonly edge: Edge; readonly offset: number } | null;
  /** Units of one family share due times: the k-th ready takes the k-th due time. -1: no due time. */
  readonly family: number;
};

/** Where a task was planned before: one that begins at another time, in another chamber or by another pool costs its price. */
export type Home = {
  readonly task: number;
  readonly start: number;
  /** -1: any will do. */
  readonly chamber: number;
  /** Per demand of the task; -1: any will do. */
  readonly pools: readonly number[];
};

export type Family = { readonly dues: readonly number[]; readonly latePrice: number };

/** Work that counts for the first minute of the span, when the span is priced from there. */
export type FirstMark = { readonly task: number; readonly edge: Edge; readonly offset: number };

export type Prices = {
  /** Price of each unit of makespan; counted from the first mark when `fromFirstMark`. */
  readonly makespan: number;
  readonly stateChange: number;
  readonly fromFirstMark: boolean;
  /** Price of each planned task that is not at its home. Default 0. */
  readonly move?: number;
};

export type ShopProblem = {
  /** Everything happens in [0, horizon]. */
  readonly horizon: number;
  readonly tasks: readonly ShopTask[];
  readonly links: readonly Link[];
  readonly bursts: readonly Burst[];
  readonly pools: readonly Pool[];
  readonly chambers: readonly Chamber[];
  readonly units: readonly Unit[];
  readonly families: readonly Family[];
  readonly firstMarks: readonly FirstMark[];
  readonly prices: Prices;
  /** Homes of tasks, where moving them has a price. Default: none. */
  readonly homes?: readonly Home[];
};

/** A move of a chamber's state: even from `from` at `start` to `to` at `end`. */
export type Move = { readonly start: number; readonly end: number; readonly from: number; readonly to: number };

/** A schedule: per task its start and end (-1: omitted), the pool of each demand (-1: served by another stay) and its chamber. */
export type Schedule = {
  readonly start: readonly number[];
  readonly end: readonly number[];
  readonly pools: readonly (readonly number[])[];
  readonly chamber: readonly number[];
  readonly moves: readonly (readonly Move[])[];
};
