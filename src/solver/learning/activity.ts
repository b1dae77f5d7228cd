// Which variable to decide next: those met in recent conflicts first (variable state independent decaying sum: Moskewicz et
// al. 2001, DAC 38, section 3), kept in a binary heap. Part of the learning solver.

const DECAY = 1 / 0.9;
const LARGEST = 1e100;

export class Activity {
  private readonly worth: Float64Array;
  private readonly heap: Int32Array;
  private readonly place: Int32Array;
  private size = 0;
  private step = 1;

  /** `worth[v]`: first worth of each variable, 0 to 1; higher goes first. */
  constructor(worth: Float64Array) {
    this.worth = worth.slice();
    this.heap = new Int32Array(worth.length);
    this.place = new Int32Array(worth.length).fill(-1);
    for (let v = 0; v < worth.length; v++) this.offer(v);
  }

  /** Puts a variable back among the open ones. */
  offer(variable: number): void {
    if ((this.place[variable] as number) >= 0) return;
    this.heap[this.size] = variable;
    this.place[variable] = this.size;
    this.size++;
    this.up(this.size - 1);
  }

  /** Takes the most active variable out; -1 when none is left. */
  take(): number {
    if (this.size === 0) return -1;
    const top = this.heap[0] as number;
    this.place[top] = -1;
    this.size--;
    if (this.size > 0) {
      this.heap[0] = this.heap[this.size] as number;
      this.place[this.heap[0] as number] = 0;
      this.down(0);
    }
    return top;
  }

  bump(variable: number): void {
    this.worth[variable] = (this.worth[variable] as number) + this.step;
    if ((this.worth[variable] as number) > LARGEST) {
      for (let v = 0; v < this.worth.length; v++) this.worth[v] = (this.worth[v] as number) / LARGEST;
      this.step /= LARGEST;
    }
    if ((this.place[variable] as number) >= 0) this.up(this.place[variable] as number);
  }

  decay(): void {
    this.step *= DECAY;
  }

  private up(from: number): void {
    const { heap, place, worth } = this;
    const v = heap[from] as number;
    const w = worth[v] as number;
    let at = from;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const p = heap[parent] as number;
      if ((worth[p] as number) >= w) break;
      heap[at] = p;
      place[p] = at;
      at = parent;
    }
    heap[at] = v;
    place[v] = at;
  }

  private down(from: number): void {
    const { heap, place, worth } = this;
    const v = heap[from] as number;
    const w = worth[v] as number;
    let at = from;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.size) break;
      if (child + 1 < this.size && (worth[heap[child + 1] as number] as number) > (worth[heap[child] as number] as number))
        child++;
      const c = heap[child] as number;
      if ((worth[c] as number) <= w) break;
      heap[at] = c;
      place[c] = at;
      at = child;
    }
    heap[at] = v;
    place[v] = at;
  }
}
