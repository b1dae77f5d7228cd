// What the parts of a model ask of the whole while it is being built: variables, clauses, capacities, orders. Implemented by
// shopModel.ts, used by the parts.
import type { Chamber } from '../problem.ts';
import type { Shop } from '../shop.ts';
import type { CrowdUse, Engine } from './engine.ts';
import type { Literal } from './literal.ts';

export type ModelDraft = {
  readonly engine: Engine;
  readonly shop: Shop;
  /** Prices are counted in so many parts of one. */
  readonly scale: number;
  /** 1: the task is in the model. */
  readonly plannedTask: Uint8Array;
  /** A yes-or-no variable. */
  addFlag(): number;
  /** Some of the literals is true. */
  clause(...literals: readonly Literal[]): void;
  /** What is true when a task is planned; null: it always is. */
  presenceOf(task: number): Literal | null;
  /** One of the flags, when a literal is true, and none otherwise; always one without it. */
  exactlyOne(flags: readonly number[], when?: Literal | null): void;
  /** `capacity[t]` during [t, t + 1) holds the uses. */
  crowd(capacity: Int32Array, uses: readonly CrowdUse[]): void;
  /** Capacity of some chambers together, all day. */
  capacityOf(chambers: readonly Chamber[]): Int32Array;
  /** A yes-or-no variable that, when true, keeps `to` at least `lag` after `from`. */
  orderFlag(from: number, to: number, lag: number): number;
};
