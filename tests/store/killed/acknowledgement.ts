// What a writer tells: what it is about to do, and what the store, or the service over it, has said is done.

export const DOINGS = ['opening', 'saving', 'posting', 'accepting', 'telling', 'forgetting', 'backing up', 'closing'] as const;
export type Doing = (typeof DOINGS)[number];

export type Told =
  | { readonly doing: Doing; readonly number: number }
  | { readonly done: 'opening' | 'backing up' | 'closing'; readonly number: number }
  | { readonly done: 'saving'; readonly number: number; readonly name: string; readonly revision: number }
  | { readonly done: 'posting'; readonly number: number; readonly date: string; readonly revision: number }
  | { readonly done: 'accepting'; readonly number: number; readonly id: string }
  | { readonly done: 'telling'; readonly number: number; readonly date: string; readonly first: number }
  /** Ended work asked before the instant of `before` may be gone from when it was begun. */
  | { readonly done: 'forgetting'; readonly number: number };
