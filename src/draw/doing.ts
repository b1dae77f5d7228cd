// One thing to do: who, when by the clock, what in words. The list and the people's columns are made of these.

export type Does = 'mix' | 'fold' | 'divide' | 'shape' | 'finish' | 'load' | 'unload' | 'heat' | 'change heat' | 'move' | 'break';

export type Doing = {
  /** Minute from the start of the day at which it begins. */
  readonly minute: number;
  /** Minute at which the hands are free again, excluded; equal to `minute` when it takes no planned minutes. */
  readonly untilMinute: number;
  /** The wall clock at `minute`, as 05:31. */
  readonly clock: string;
  /** null: the plan leaves open who does it. */
  readonly who: { readonly id: string; readonly name: string } | null;
  readonly does: Does;
  /** The sentence, without who and when. */
  readonly what: string;
  /** Products or doughs it handles, with their trays (0 for a dough). */
  readonly handles: readonly { readonly id: string; readonly sort: 'product' | 'dough'; readonly trays: number }[];
  /** Id of the deck, proofer, retarder or mixer it is done at, when there is one. */
  readonly placeId?: string;
  /** How it was planned before, when the day was planned anew and it has moved: a time, a place, a person. */
  readonly was?: string;
  /** Tasks of the plan it belongs to. */
  readonly taskIds: readonly string[];
};
