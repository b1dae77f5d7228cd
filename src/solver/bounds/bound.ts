// A proved floor under the price of any schedule, with the argument that gave it.

/** A group of pools or of chambers. */
export type GroupName = { readonly isChamber: boolean; readonly ids: readonly number[] };

export type BoundArgument =
  /** The longest chain of tasks of one unit. */
  | { readonly kind: 'path'; readonly unit: number; readonly makespan: number }
  /** A group of pools has so much work that cannot begin before `head` and must be followed by `tail`. */
  | {
      readonly kind: 'pool-work';
      readonly pools: readonly number[];
      readonly uses: number;
      readonly head: number;
      readonly tail: number;
      readonly makespan: number;
    }
  /** The same for chambers. */
  | {
      readonly kind: 'chamber-work';
      readonly chambers: readonly number[];
      readonly stays: number;
      readonly head: number;
      readonly tail: number;
      readonly makespan: number;
    }
  /** Work on a group that arrives no faster than another lets it through, and leaves no faster than a third takes it. */
  | {
      readonly kind: 'flow';
      readonly at: GroupName;
      readonly through: GroupName | null;
      readonly to: GroupName | null;
      readonly uses: number;
      readonly makespan: number;
    }
  /** Loads per chamber and state: the relaxation of an integer program. */
  | { readonly kind: 'chamber-loads' }
  /** So many units must be omitted. */
  | { readonly kind: 'omission'; readonly omitted: number }
  /** Omitting one unit already costs so much. */
  | { readonly kind: 'one-omission' }
  /** A search went through every way of making a schedule of all units that costs less. */
  | { readonly kind: 'search' }
  /** A search went through every way of making a schedule of all units that costs less than omitting one, or any at all. */
  | { readonly kind: 'search-omission'; readonly isNecessary: boolean }
  | { readonly kind: 'none' };

export type Bound = { readonly value: number; readonly argument: BoundArgument };
