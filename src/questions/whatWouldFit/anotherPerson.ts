// The change "another person from … to …": first the whole day, then as few minutes as can be found. Used by whatWouldFit.
import { sayMinute, sayMinutes } from '../../check/sayMinute.ts';
import { minuteAt } from '../../model/clock.ts';
import type { Plan } from '../../model/plan.ts';
import type { FitChange } from '../../model/wouldFit.ts';
import type { Ground, Variant } from './ladder.ts';
import { notAgain, notSure, offer, outOfTime, refuse, type Search } from './outcome.ts';
import type { Trial } from './trial.ts';

const KIND: FitChange = 'another-person';

/** Hours are agreed on in steps of so many minutes (common practice). */
const STEP = 5;

/** Where the search from scratch does not find what is there, hours longer by so much at each end are tried. */
const LONGER = [15, 30, 60];

/** Minutes of the day; `until` excluded. */
type Hours = { readonly from: number; readonly until: number };

export class AnotherPerson {
  private readonly ground: Ground;
  private readonly trial: Trial;
  private readonly id: string;
  private readonly day: Hours;
  private best: { readonly hours: Hours; readonly variant: Variant } | null = null;

  constructor(ground: Ground, trial: Trial) {
    this.ground = ground;
    this.trial = trial;
    const taken = new Set(ground.scenario.people?.map(({ id }) => id));
    let number = 1;
    while (taken.has(this.idOf(number))) number++;
    this.id = this.idOf(number);
    this.day = { from: ground.scenario.underway?.now ?? 0, until: ground.clock.minutes };
  }

  private idOf(number: number): string {
    return number === 1 ? 'another-person' : `another-person-${number}`;
  }

  async *search(): Search {
    const { people } = this.ground.scenario;
    if (people === undefined) return refuse(KIND, 'of-no-use', 'The scenario names no people: hands never limit the day.');
    const whole = this.variantFor(this.day);
    if (whole === null) return refuse(KIND, 'not-found', 'The clocks change at an end of the day; nobody was tried.');
    if (!this.trial.hasTime()) return outOfTime(KIND);
    const first = await this.trial.decide(whole);
    yield;
    if (first.is === 'impossible' && this.trial.isWhole)
      return refuse(KIND, 'proved', 'Another pair of hands all day is not enough, proved.');
    if (first.is !== 'possible' || first.plan === null)
      return refuse(KIND, 'not-found', 'Another pair of hands all day is not known to be enough: no plan was found.');
    this.take(this.day, whole, first.plan);
    for (const end of ['until', 'from'] as const) {
      const isOver = yield* this.shorten(end);
      if (isOver) return outOfTime(KIND);
    }
    return yield* this.confirm();
  }

  private variantFor({ from, until }: Hours): Variant | null {
    const { clock, scenario } = this.ground;
    const texts = { from: sayMinute(clock, from), until: sayMinute(clock, until) };
    // In a night when the clocks change, a time can come twice or never.
    if (minuteAt(clock, texts.from) !== from || minuteAt(clock, texts.until) !== until || scenario.people === undefined)
      return null;
    return {
      amount: until - from,
      operations: [{ op: 'add', path: '/people/-', value: { id: this.id, ...texts } }],
      does: `Have another person from ${texts.from} to ${texts.until}, ${sayMinutes(until - from)}`,
      earlierBy: 0,
    };
  }

  /** Takes hours that work, cut to those in which the plan has work for the person. */
  private take(hours: Hours, variant: Variant, plan: Plan): void {
    const work = plan.tasks.flatMap(({ handsOn }) => handsOn.filter(({ person }) => person === this.id));
    this.best = { hours, variant };
    if (work.length === 0) return;
    const { day } = this;
    const first = Math.min(...work.map(({ start }) => start));
    const last = Math.max(...work.map(({ end }) => end));
    const cut = {
      from: Math.max(hours.from, day.from + Math.floor((first - day.from) / STEP) * STEP),
      until: Math.min(hours.until, day.from + Math.ceil((last - day.from) / STEP) * STEP),
    };
    const shorter = this.variantFor(cut);
    if (shorter !== null) this.best = { hours: cut, variant: shorter };
  }

  /** Moves one end inwards, by halves; true when the time is over. */
  private async *shorten(end: 'from' | 'until'): AsyncGenerator<undefined, boolean, undefined> {
    let fails = 0;
    for (;;) {
      const hours = this.best?.hours ?? this.day;
      const steps = Math.floor((hours.until - hours.from - fails) / STEP);
      if (steps < 1) return false;
      // Lengths from `fails`, which does not work, to that of the hours, which does.
      const length = fails + STEP * Math.floor(steps / 2);
      if (length <= fails || length >= hours.until - hours.from) return false;
      if (!this.trial.hasTime()) return true;
      const shorter =
        end === 'until' ? { from: hours.from, until: hours.from + length } : { from: hours.until - length, until: hours.until };
      const variant = this.variantFor(shorter);
      const verdict = variant === null ? null : await this.trial.decide(variant);
      yield;
      if (variant !== null && verdict?.is === 'possible' && verdict.plan !== null) this.take(shorter, variant, verdict.plan);
      else fails = length;
    }
  }

  private async *confirm(): Search {
    const { best, day } = this;
    if (best === null) return outOfTime(KIND);
    const longer = LONGER.map((more) => ({
      from: Math.max(day.from, best.hours.from - more),
      until: Math.min(day.until, best.hours.until + more),
    }));
    for (const hours of [best.hours, ...longer, day]) {
      const variant = this.variantFor(hours);
      if (variant === null) continue;
      if (!this.trial.hasTime()) return notSure(KIND, best.variant);
      const plan = await this.trial.planAgain(variant);
      if (plan === 'no-time') return notSure(KIND, best.variant);
      yield;
      if (plan !== 'not-found') return offer(KIND, variant, false, plan);
    }
    return notAgain(KIND, best.variant);
  }
}
