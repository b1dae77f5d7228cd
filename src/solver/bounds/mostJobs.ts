// How many jobs a resource can do in a given time, at most. Used by the flow bound.

/**
 * Most jobs that can be done by their due times on one machine: Moore's rule (Moore 1968, Management Science 15). Jobs come
 * sorted by due time.
 */
export function mostInTime(lengths: readonly number[], dues: ArrayLike<number>): number {
  const taken: number[] = [];
  let total = 0;
  for (let i = 0; i < lengths.length; i++) {
    const length = lengths[i] as number;
    let at = taken.length;
    while (at > 0 && (taken[at - 1] as number) > length) at--;
    taken.splice(at, 0, length);
    total += length;
    if (total > (dues[i] as number)) total -= taken.pop() as number;
  }
  return taken.length;
}

/**
 * Most of `count` jobs or fewer that fit on so many places, one after another on each, within `span`. Of any k jobs, those from
 * the r-th shortest on share the places, so that some place holds at least (k - r + 1) / places of them, each at least as long.
 *
 * @param lengths - of all jobs there are, shortest first
 */
export function mostOnPlaces(lengths: readonly number[], count: number, places: number, span: number): number {
  let k = Math.min(count, lengths.length);
  for (let r = 0; r < k; r++) {
    const length = lengths[r] as number;
    if (length === 0) continue;
    k = Math.min(k, r + places * Math.floor(span / length));
  }
  return Math.max(0, k);
}
