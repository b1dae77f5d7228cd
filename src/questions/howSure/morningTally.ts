// What is counted over the mornings of a plan: orders on time, trays late or standing too long, people past their hours.
import type { Course, Lag, Watch } from './course.ts';
import type { DueProduct } from './dueTrays.ts';
import type { Mornings } from './mornings.ts';
import { ReadyMinutes } from './readyMinutes.ts';
import { RiskTally } from './riskTally.ts';
import { ServedTrays } from './servedTrays.ts';

/** Dough that stands, and bread that bakes, up to so many minutes longer than it may is nobody's trouble: `common practice`. */
export const STANDS_TOO_LONG_MINUTES = 5;
export const BAKES_TOO_LONG_MINUTES = 2;

/** Minutes at which something a moment waits for is over, one for each morning. */
function limitsOf(mornings: Mornings, { from, minutes, draw, plus }: Lag, into: Float64Array): void {
  const before = mornings.timesOf(from);
  const factors = draw < 0 ? null : mornings.factorsOf(draw);
  for (let i = 0; i < mornings.size; i++)
    into[i] = (before[i] as number) + minutes * (factors === null ? 1 : (factors[i] as number)) + plus;
}

export class MorningTally {
  mornings = 0;
  lateTrayMinutes = 0;
  allOnTime = 0;
  readonly onTime: Int32Array;
  readonly ready: ReadyMinutes;
  readonly late: RiskTally;
  readonly stands: RiskTally;
  readonly bakes: RiskTally;
  readonly pastHours: RiskTally;
  private readonly course: Course;
  private readonly served: readonly ServedTrays[];

  constructor(course: Course, products: readonly DueProduct[], plannedMinutes: readonly (number | null)[]) {
    this.course = course;
    this.served = products.map((due) => new ServedTrays(due));
    this.onTime = new Int32Array(plannedMinutes.length);
    this.ready = new ReadyMinutes(plannedMinutes);
    this.late = new RiskTally(course.trays.length);
    this.stands = new RiskTally(course.trays.length);
    this.bakes = new RiskTally(course.trays.length);
    this.pastHours = new RiskTally(course.people.length);
  }

  /** Counts the mornings just worked out. */
  add(mornings: Mornings): void {
    const readyOf = this.course.trays.map(({ ready }) => mornings.timesOf(ready));
    for (let i = 0; i < mornings.size; i++) this.addMorning((tray) => readyOf[tray]?.[i] as number);
    for (const [number, tray] of this.course.trays.entries()) {
      this.addWatches(mornings, tray.dough, STANDS_TOO_LONG_MINUTES, (minutes) => this.stands.add(number, minutes));
      this.addWatches(mornings, tray.bread, BAKES_TOO_LONG_MINUTES, (minutes) => this.bakes.add(number, minutes));
    }
    for (const [number, { untilMinute }] of this.course.people.entries())
      for (const minute of mornings.workedUntil(number))
        if (minute > untilMinute + 1e-6) this.pastHours.add(number, minute - untilMinute);
    this.mornings += mornings.size;
  }

  private addMorning(readyMinuteOf: (tray: number) => number): void {
    let isAllOnTime = true;
    for (const served of this.served) {
      served.serve(readyMinuteOf);
      for (let k = 0; k < served.trays.length; k++) {
        const minutes = served.lateMinutes(k);
        if (minutes === 0) continue;
        this.lateTrayMinutes += minutes;
        this.late.add(served.trays[k] as number, minutes);
      }
      for (const { number, dueMinute, lastTray } of served.due.orders) {
        if (lastTray < served.ready.length) this.ready.add(number, served.ready[lastTray] as number);
        if (served.isOnTime(dueMinute, lastTray)) this.onTime[number] = (this.onTime[number] ?? 0) + 1;
        else isAllOnTime = false;
      }
    }
    if (isAllOnTime) this.allOnTime += 1;
  }

  /** Adds up, morning by morning, the minutes beyond every limit watched; tells of those above what is nobody's trouble. */
  private addWatches(mornings: Mornings, watches: readonly Watch[], trouble: number, tell: (minutes: number) => void): void {
    const { size } = mornings;
    const sum = new Float64Array(size);
    const limits = new Float64Array(size);
    for (const { moment, limit } of watches) {
      const times = mornings.timesOf(moment);
      limitsOf(mornings, limit, limits);
      for (let i = 0; i < size; i++) sum[i] = (sum[i] as number) + Math.max(0, (times[i] as number) - (limits[i] as number));
    }
    for (let i = 0; i < size; i++) if ((sum[i] as number) > trouble + 1e-6) tell(sum[i] as number);
  }
}

/** Minutes late over all trays and mornings just worked out. */
export function lateTrayMinutes(mornings: Mornings, course: Course, products: readonly DueProduct[]): number {
  const readyOf = course.trays.map(({ ready }) => mornings.timesOf(ready));
  let sum = 0;
  for (const due of products) {
    const served = new ServedTrays(due);
    for (let i = 0; i < mornings.size; i++) {
      served.serve((tray) => readyOf[tray]?.[i] as number);
      for (let k = 0; k < served.trays.length; k++) sum += served.lateMinutes(k);
    }
  }
  return sum;
}
