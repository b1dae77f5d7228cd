// The trays of one product in one morning: put in the order in which they are ready, and told how late each is.
import type { DueProduct } from './dueTrays.ts';

/** Room for adding up decimals, in minutes: the same number of minutes late is none. */
const NEARLY = 1e-6;

export class ServedTrays {
  readonly due: DueProduct;
  /** Numbers of the trays in the course, as they got ready. */
  readonly trays: Int32Array;
  /** When the k-th was ready. */
  readonly ready: Float64Array;

  constructor(due: DueProduct) {
    this.due = due;
    this.trays = new Int32Array(due.trays.length);
    this.ready = new Float64Array(due.trays.length);
  }

  /** Serves the orders of a morning. They get ready nearly in one order every morning: sorting by insertion is quick. */
  serve(readyMinuteOf: (tray: number) => number): void {
    const { trays, ready } = this;
    for (const [k, tray] of this.due.trays.entries()) {
      const minute = readyMinuteOf(tray);
      let at = k;
      while (at > 0 && (ready[at - 1] as number) > minute) {
        ready[at] = ready[at - 1] as number;
        trays[at] = trays[at - 1] as number;
        at -= 1;
      }
      ready[at] = minute;
      trays[at] = tray;
    }
  }

  /** Minutes late of the k-th tray to be ready; 0 on time. */
  lateMinutes(k: number): number {
    const late = (this.ready[k] as number) - (this.due.dueMinutes[k] as number);
    return late > NEARLY ? late : 0;
  }

  isOnTime(dueMinute: number, lastTray: number): boolean {
    return lastTray < this.ready.length && (this.ready[lastTray] as number) - dueMinute <= NEARLY;
  }
}
