// Many mornings of one course at once, moment by moment in an order that works, each moment for all mornings of a block.
// Used by howSure.ts; tests look at the times themselves.
import type { Course, Lag, Moment, SpreadStep } from './course.ts';
import { courseOrder } from './courseOrder.ts';
import { PeopleAtWork } from './peopleAtWork.ts';
import { PlacesInUse } from './placesInUse.ts';

/** Real minutes are never less than this share of those stated, however quick the morning. */
export const LEAST_SHARE = 0.5;

/** About how many times are held at once: they fit into the cache of a processor. */
const TIMES_AT_ONCE = 120_000;
const LEAST_BLOCK = 32;
const MOST_BLOCK = 1024;

/** Whose spread counts: everybody's, or all but that of one step, or of one step of one dough or product. */
export type Without = { readonly step: SpreadStep; readonly of?: string };

function isLeftAway(without: Without | null, step: SpreadStep, of: string): boolean {
  return without !== null && without.step === step && (without.of === undefined || without.of === of);
}

export class Mornings {
  /** Mornings worked out at once, at most. */
  readonly block: number;
  /** Mornings of the block that is worked out now. */
  size = 0;
  private readonly course: Course;
  private readonly order: readonly number[];
  /** Times of moments: those of one moment stand together, one for each morning of the block. */
  private readonly times: Float64Array;
  private readonly factors: Float64Array;
  private readonly places: PlacesInUse;
  private readonly people: PeopleAtWork;

  constructor(course: Course) {
    this.course = course;
    this.order = courseOrder(course);
    const rows = Math.max(1, course.moments.length);
    this.block = Math.max(LEAST_BLOCK, Math.min(MOST_BLOCK, Math.floor(TIMES_AT_ONCE / rows)));
    this.times = new Float64Array(rows * this.block);
    this.factors = new Float64Array(Math.max(1, course.draws.length) * this.block);
    this.places = new PlacesInUse(course, this.block);
    this.people = new PeopleAtWork(course, this.block);
  }

  /** Times of a moment, in minutes of the day, one for each morning. */
  timesOf(moment: number): Float64Array {
    return this.times.subarray(moment * this.block, moment * this.block + this.size);
  }

  /** What a morning makes of the minutes of a draw. */
  factorsOf(draw: number): Float64Array {
    return this.factors.subarray(draw * this.block, draw * this.block + this.size);
  }

  /** When a person has done their last work, in minutes of the day, one for each morning. */
  workedUntil(person: number): Float64Array {
    return this.people.workedUntil(person).subarray(0, this.size);
  }

  /** Works out `size` mornings. `chances`: normally distributed numbers, those of one chance together, `block` apart. */
  run(chances: Float64Array, size: number, without: Without | null): void {
    this.size = size;
    this.drawMinutes(chances, without);
    this.places.clear(size);
    this.people.clear();
    for (const moment of this.order) this.workOut(moment, this.course.moments[moment] as Moment);
  }

  private drawMinutes(chances: Float64Array, without: Without | null): void {
    const { block, size } = this;
    for (const [index, { chance, spread, step, of }] of this.course.draws.entries()) {
      const factors = this.factorsOf(index);
      if (isLeftAway(without, step, of)) factors.fill(1);
      else
        for (let i = 0; i < size; i++) {
          const factor = 1 + spread * (chances[chance * block + i] as number);
          factors[i] = Math.max(LEAST_SHARE, factor);
        }
    }
  }

  private workOut(index: number, moment: Moment): void {
    const times = this.timesOf(index);
    if (moment.keeps === 'past') times.fill(moment.planned);
    else {
      times.fill(moment.keeps === 'sheet' ? moment.planned : this.course.now);
      if (moment.keeps === 'sheet') for (const lag of moment.canWaitUntil) this.notBeyond(times, lag);
      const { now } = this.course;
      if (now > 0) for (let i = 0; i < times.length; i++) if ((times[i] as number) < now) times[i] = now;
      for (const lag of moment.after) this.notBefore(times, lag);
    }
    this.places.take(index, times, this.factors);
    this.people.take(index, times, this.factors);
    if (moment.keeps === 'past') times.fill(moment.planned);
    this.places.hold(index, times, this.factors);
    this.places.free(index, times);
  }

  private notBefore(times: Float64Array, { from, minutes, draw, plus }: Lag): void {
    const before = this.timesOf(from);
    const factors = draw < 0 ? null : this.factorsOf(draw);
    for (let i = 0; i < times.length; i++) {
      const time = (before[i] as number) + (factors === null ? minutes : minutes * (factors[i] as number)) + plus;
      if (time > (times[i] as number)) times[i] = time;
    }
  }

  private notBeyond(times: Float64Array, { from, minutes, draw, plus }: Lag): void {
    const before = this.timesOf(from);
    const factors = draw < 0 ? null : this.factorsOf(draw);
    for (let i = 0; i < times.length; i++) {
      const time = (before[i] as number) + (factors === null ? minutes : minutes * (factors[i] as number)) + plus;
      if (time < (times[i] as number)) times[i] = time;
    }
  }
}
