// How many jobs a resource can do in a given time, at most. Used by the flow bound, for every minute of the day: jobs are put
// down anew each time, in buffers kept.

export class MostJobs {
  private readonly works: Float64Array;
  private readonly dues: Float64Array;
  private readonly lengths: Float64Array;
  /** Works of the jobs taken so far, least first. */
  private readonly taken: Float64Array;
  private jobs = 0;
  private known = 0;

  /** For up to `count` jobs. */
  constructor(count: number) {
    this.works = new Float64Array(count);
    this.dues = new Float64Array(count);
    this.lengths = new Float64Array(count);
    this.taken = new Float64Array(count);
  }

  clear(): void {
    this.jobs = 0;
    this.known = 0;
  }

  /** A job that takes `work` of all the resource does, and must be done when the resource has done `due`. They come by due time. */
  add(work: number, due: number): void {
    this.works[this.jobs] = work;
    this.dues[this.jobs++] = due;
  }

  /** How long one of the same jobs keeps its place, 0 where that is not known. They come shortest first. */
  addLength(length: number): void {
    this.lengths[this.known++] = length;
  }

  /** Most of them, on so many places within `span`. */
  most(places: number, span: number): number {
    return this.onPlaces(this.inTime(), places, span);
  }

  /** On one machine as fast as all places together: Moore's rule (Moore 1968, Management Science 15). */
  private inTime(): number {
    const { works, dues, taken } = this;
    let size = 0;
    let total = 0;
    for (let i = 0; i < this.jobs; i++) {
      const work = works[i] as number;
      let at = size++;
      while (at > 0 && (taken[at - 1] as number) > work) {
        taken[at] = taken[at - 1] as number;
        at--;
      }
      taken[at] = work;
      total += work;
      if (total > (dues[i] as number)) total -= taken[--size] as number;
    }
    return size;
  }

  /**
   * One after another on each place. Of any k jobs, those from the r-th shortest on share the places, so that some place holds
   * at least (k - r + 1) / places of them, each at least as long.
   */
  private onPlaces(most: number, places: number, span: number): number {
    let k = Math.min(this.known, most);
    for (let r = 0; r < k; r++) {
      const length = this.lengths[r] as number;
      if (length > 0) k = Math.min(k, r + places * Math.floor(span / length));
    }
    return Math.max(0, k);
  }
}
