// Walks the steps of a tray or batch forward over the rest of a plan as it stands: at which minutes each step could begin, and the
// step that can be begun nowhere in time. Used by why.
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { bakeOptions } from './bakeOptions.ts';
import type { Ground } from './ground.ts';
import type { Option } from './option.ts';
import { minutesOf, placeOptions } from './placeOptions.ts';

type Step = BatchStep | TrayStep;

export type Walk =
  /** Every step finds its place; done at the earliest at `done`; `next` is 1 where a step after them could begin. */
  | { readonly is: 'through'; readonly done: number; readonly next: Uint8Array }
  /** It cannot begin soon enough: nothing allows a begin at or before `latest`. */
  | { readonly is: 'no-begin'; readonly latest: number }
  /** At step `at` no place allows it at any minute of `arrivals`, all of which would be in time. */
  | { readonly is: 'stuck'; readonly at: number; readonly arrivals: Uint8Array; readonly options: readonly Option[] };

/** Shortest minutes from the begin of a step until it is done, loading and unloading included. */
export function shortest(step: Step): number {
  return minutesOf(step).min + (step.do === 'bake' ? step.load + step.unload : 0);
}

function allowed(option: Option, minute: number): boolean {
  return option.conditions.every((condition) => condition.holds(minute));
}

/**
 * `begins[t]` is 1 where the first step may begin. Done by `by`, that minute included. `batchKg` is what the batch weighs that a mix
 * among the steps makes.
 */
export function walk(ground: Ground, steps: readonly Step[], begins: Uint8Array, by: number, batchKg: number): Walk {
  let left = steps.reduce((sum, step) => sum + shortest(step), 0);
  let arrivals = begins.slice();
  arrivals.fill(0, Math.max(0, by - left + 1));
  if (!arrivals.includes(1)) return { is: 'no-begin', latest: by - left };
  let earliestDone = Number.POSITIVE_INFINITY;
  for (const [at, step] of steps.entries()) {
    const options = step.do === 'bake' ? bakeOptions(ground, step) : placeOptions(ground, step, batchKg);
    const next = new Uint8Array(ground.minutes + 1);
    left -= shortest(step);
    earliestDone = Number.POSITIVE_INFINITY;
    for (let minute = 0; minute < arrivals.length; minute++) {
      if (arrivals[minute] !== 1) continue;
      for (const option of options) {
        if (!allowed(option, minute)) continue;
        for (const { from, to } of option.next(minute)) {
          if (from > by - left) continue;
          earliestDone = Math.min(earliestDone, from);
          next.fill(1, from, Math.max(from, Math.min(to, by - left)) + 1);
        }
      }
    }
    if (earliestDone === Number.POSITIVE_INFINITY) return { is: 'stuck', at, arrivals, options };
    arrivals = next;
  }
  return { is: 'through', done: earliestDone, next: arrivals };
}
