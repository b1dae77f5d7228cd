// By when an added order can be ready, the earliest time found by halves. Used by fit.
import { sayMinute } from '../../check/sayMinute.ts';
import { type Clock, clockOf, minuteAt } from '../../model/clock.ts';
import type { ReadyTimes } from '../../model/fitAnswer.ts';
import type { Plan } from '../../model/plan.ts';
import { orderWords } from '../whatWouldFit/orderWords.ts';
import type { Trial } from '../whatWouldFit/trial.ts';
import { type AddedOrder, type AddedTo, dueMinuteOf, readyMinuteOf } from './addedTo.ts';

export class EarliestReady {
  private readonly day: AddedTo;
  private readonly order: AddedOrder;
  private readonly trial: Trial;
  private readonly clock: Clock;
  /** The earliest minute known to work. */
  private works: number | null;
  /** The latest known not to work; nothing is ready at the start of the day. */
  private fails = 0;
  private isFailProved = true;

  /** `found`: a plan of the day in which the order fits when it is wanted; null when there is none. */
  constructor(day: AddedTo, order: AddedOrder, trial: Trial, found: Plan | null) {
    this.day = day;
    this.order = order;
    this.trial = trial;
    this.clock = clockOf(day.after);
    this.works = found === null ? null : this.shownBy(found, dueMinuteOf(this.clock, order));
  }

  /** A plan with the order on time at a minute shows that it can be ready when it is there, the only one of its product. */
  private shownBy(plan: Plan, minute: number): number {
    const { index, product } = this.order;
    const isOnly = this.day.after.orders.every((order, at) => at === index || order.product !== product);
    const ready = isOnly ? readyMinuteOf(plan, this.day, index, this.clock) : null;
    return ready === null ? minute : Math.min(minute, this.written(ready));
  }

  private async ask(minute: number): Promise<void> {
    const readyBy = sayMinute(this.clock, minute);
    const { is, plan } = await this.trial.decide({
      amount: minute,
      operations: [{ op: 'replace', path: `/orders/${this.order.index}/readyBy`, value: readyBy }],
      does: '',
      earlierBy: 0,
    });
    if (is === 'possible' && plan !== null) {
      this.works = this.shownBy(plan, minute);
      return;
    }
    this.fails = minute;
    this.isFailProved = is === 'impossible';
  }

  /** In a night when the clocks change, a time can come twice or never; the nearest later one that can be written is asked. */
  private written(minute: number): number {
    let at = minute;
    while (minuteAt(this.clock, sayMinute(this.clock, at)) !== at) at++;
    return at;
  }

  async search(): Promise<ReadyTimes> {
    if (this.works === null && this.trial.hasTime()) await this.ask(this.clock.minutes);
    while (this.works !== null && this.trial.hasTime()) {
      const middle = this.written(Math.floor((this.works + this.fails) / 2));
      if (middle <= this.fails || middle >= this.works) break;
      await this.ask(middle);
    }
    return this.answer();
  }

  private answer(): ReadyTimes {
    const { product, pieces, readyBy, index } = this.order;
    const isEarliest = this.works !== null && this.works - this.fails <= 1 && this.isFailProved && this.trial.isWhole;
    const earliest = this.works === null ? null : sayMinute(this.clock, this.works);
    const isNever = this.fails === this.clock.minutes && this.isFailProved && this.trial.isWhole;
    const { until } = this.day.after.day;
    const says = this.says(earliest, isEarliest, isNever);
    return { number: index + 1, product, pieces, readyBy, earliest, isEarliest, latest: earliest === null ? null : until, says };
  }

  private says(earliest: string | null, isEarliest: boolean, isNever: boolean): string {
    const name = orderWords(this.day.after, this.order);
    if (isNever) return `${name} cannot be ready at any time of the day with the rest on time, proved.`;
    if (earliest === null) return `No time of the day was found by which ${name} can be ready with the rest on time.`;
    if (isEarliest) return `${name} can be ready by ${earliest} or any later time; earlier is proved not to work.`;
    return `${name} can be ready by ${earliest}, the earliest found, or any later time.`;
  }
}
