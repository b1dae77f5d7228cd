// How many jobs a resource can do in a given time, at most. Used by the flow bound, for every minute of the day.

export class MostJobs {
  /** Lengths of the jobs taken so far, shortest first. */
  private readonly taken: Float64Array;

  /** For up to `count` jobs. */
  constructor(count: number) {
    this.taken = new Float64Array(count);
  }

  /**
   * Most of the first `count` jobs that can be done by their due times on one machine: Moore's rule (Moore 1968, Management
   * Science 15). Jobs come sorted by due time.
   */
  inTime(lengths: Float64Array, dues: Float64Array, count: number): number {
    const { taken } = this;
    let size = 0;
    let total = 0;
    for (let i = 0; i < count; i++) {
      const length = lengths[i] as number;
      let at = size++;
      while (at > 0 && (taken[at - 1] as number) > length) {
        taken[at] = taken[at - 1] as number;
        at--;
      }
      taken[at] = length;
      total += length;
      if (total > (dues[i] as number)) total -= taken[--size] as number;
    }
    return size;
  }
}

/**
 * Most jobs, `most` or fewer, that fit on so many places, one after another on each, within `span`. Of any k jobs, those from
 * the r-th shortest on share the places, so that some place holds at least (k - r + 1) / places of them, each at least as long.
 *
 * @param lengths - of the `count` jobs there are, shortest first
 */
export function mostOnPlaces(lengths: Float64Array, count: number, most: number, places: number, span: number): number {
  let k = Math.min(count, most);
  for (let r = 0; r < k; r++) {
    const length = lengths[r] as number;
    if (length > 0) k = Math.min(k, r + places * Math.floor(span / length));
  }
  return Math.max(0, k);
}
