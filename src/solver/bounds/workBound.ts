// Capacity over subsets: work that cannot begin before its heads and is followed by its tails needs so much time
// (the subset bound of Carlier 1982, EJOR 11, section 2, for several machines by dividing the work).
import type { Work } from './headsAndTails.ts';

export type WorkBound = { readonly makespan: number; readonly count: number; readonly head: number; readonly tail: number };

/** Capacity used up to each time: sum[t] = capacity during [0, t). */
export function capacitySums(capacity: Int32Array): Float64Array {
  const sum = new Float64Array(capacity.length + 1);
  for (let t = 0; t < capacity.length; t++) sum[t + 1] = (sum[t] as number) + (capacity[t] as number);
  return sum;
}

/** First time at which the capacity since `from` amounts to `work`; the length of the day plus one when it never does. */
function finishOf(sum: Float64Array, from: number, work: number): number {
  const target = (sum[Math.min(from, sum.length - 1)] as number) + work;
  let low = from;
  let high = sum.length - 1;
  if ((sum[high] as number) < target) return sum.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sum[middle] as number) >= target) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Best over all subsets of work with head at least a and tail at least b. Heads and tails are those of the day. */
export function workBound(work: readonly Work[], sum: Float64Array): WorkBound {
  let best: WorkBound = { makespan: 0, count: 0, head: 0, tail: 0 };
  const byTail = [...work].filter((w) => w.length > 0).sort((a, b) => b.tail - a.tail);
  for (const head of new Set(byTail.map((w) => w.head))) {
    let total = 0;
    let count = 0;
    byTail.forEach((w, i) => {
      if (w.head < head) return;
      total += w.length * w.amount;
      count++;
      if (byTail[i + 1]?.tail === w.tail) return;
      const makespan = finishOf(sum, head, total) + w.tail;
      if (makespan > best.makespan) best = { makespan, count, head, tail: w.tail };
    });
  }
  return best;
}

/** Least span from the first mark to the makespan, with the greatest capacity the pools ever have. */
export function spanBound(work: readonly Work[], greatestCapacity: number): WorkBound {
  let best: WorkBound = { makespan: 0, count: 0, head: 0, tail: 0 };
  if (greatestCapacity === 0) return best;
  // Work that may begin before the first mark is no part of the span.
  const byTail = work.filter((w) => w.length > 0 && w.fromFirst >= 0).sort((a, b) => b.tail - a.tail);
  for (const head of new Set(byTail.map((w) => w.fromFirst))) {
    let total = 0;
    let count = 0;
    for (const w of byTail) {
      if (w.fromFirst < head) continue;
      total += w.length * w.amount;
      count++;
      const makespan = head + Math.ceil(total / greatestCapacity) + w.tail;
      if (makespan > best.makespan) best = { makespan, count, head, tail: w.tail };
    }
  }
  return best;
}

/**
 * Least number of units to omit so that the rest of the work fits the capacity between the smallest head and tail.
 * With a unit its parent may go, when it was the last child: a unit counts with all its parent's work, so that no set of
 * so few units can free more than is reckoned here. The tail of a parent's work depends on which child is left: 0.
 *
 * @param parentOf - per unit its parent, or null; a unit that is a parent is never counted by itself.
 */
export function omissionsNeeded(work: readonly Work[], sum: Float64Array, parentOf: readonly (number | null)[]): number {
  if (work.length === 0) return 0;
  const parents = new Set(parentOf);
  const head = Math.min(...work.map((w) => w.head));
  const tail = Math.max(0, Math.min(...work.map((w) => (w.unit < 0 || parents.has(w.unit) ? 0 : w.tail))));
  const until = Math.max(head, sum.length - 1 - tail);
  const room = (sum[until] as number) - (sum[Math.min(head, until)] as number);
  const ofUnit = new Map<number, number>();
  let total = 0;
  for (const w of work) {
    total += w.length * w.amount;
    ofUnit.set(w.unit, (ofUnit.get(w.unit) ?? 0) + w.length * w.amount);
  }
  const freed = parentOf.flatMap((parent, u) =>
    parents.has(u) ? [] : [(ofUnit.get(u) ?? 0) + (parent === null ? 0 : (ofUnit.get(parent) ?? 0))],
  );
  let omitted = 0;
  for (const size of freed.sort((a, b) => b - a)) {
    if (total <= room || size === 0) return omitted;
    total -= size;
    omitted++;
  }
  return omitted;
}
