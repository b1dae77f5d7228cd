// Finds the lowest rung of a ladder with which the wanted trays fit: all of it first, then upwards in steps that double, then by
// halves, then the day planned from scratch. Used by whatWouldFit.
import type { Ladder, Variant } from './ladder.ts';
import { notAgain, notSure, type Outcome, offer, outOfTime, refuse, type Search } from './outcome.ts';
import type { Trial, Verdict } from './trial.ts';

/** Where the search from scratch does not find what is there, a little more is tried: so much more of it, one after another. */
const MORE = [1.1, 1.25, 1.5];

type Asked = { readonly is: Verdict | 'no-time'; readonly variant: Variant | null };

export class Climb {
  private readonly ladder: Ladder;
  private readonly trial: Trial;
  /** The lowest rung known to work. */
  private seen: { readonly rung: number; readonly variant: Variant } | null = null;
  /** The highest rung below it that is not known to work; and rungs proved not to. */
  private low = 0;
  private readonly proved = new Set<number>();
  private isOver = false;

  /** `isBaseImpossible`: it is proved that without a change the trays cannot fit. */
  constructor(ladder: Ladder, trial: Trial, isBaseImpossible: boolean) {
    this.ladder = ladder;
    this.trial = trial;
    if (isBaseImpossible) this.proved.add(0);
  }

  async *search(): Search {
    const { kind, top, isRising } = this.ladder;
    // Where all of it is not enough, less is not either.
    if (isRising) yield* this.ask(top);
    if (this.seen !== null || !isRising) yield* this.rise();
    while (!this.isOver && this.seen !== null && this.seen.rung - this.low > 1)
      yield* this.ask(Math.floor((this.seen.rung + this.low) / 2));
    if (this.isOver) return outOfTime(kind);
    return this.seen === null ? this.none() : yield* this.confirm(this.seen);
  }

  /** Upwards, until something works or what works already is reached. */
  private async *rise(): AsyncGenerator<undefined, void, undefined> {
    const { first, top } = this.ladder;
    for (let rung = first; !this.isOver && rung < (this.seen?.rung ?? top); rung *= 2) yield* this.ask(rung);
    if (this.seen === null && !this.isOver) yield* this.ask(top);
  }

  private none(): Outcome {
    const { kind, top, topWords, isRising } = this.ladder;
    if (isRising && this.trial.isWhole && this.proved.has(top))
      return refuse(kind, 'proved', `${topWords} is not enough, proved.`);
    return refuse(kind, 'not-found', `${topWords} is not known to be enough: no plan was found.`);
  }

  private async *ask(rung: number): AsyncGenerator<undefined, void, undefined> {
    const { is, variant } = yield* this.decide(rung);
    if (is === 'no-time') this.isOver = true;
    else if (variant !== null) this.seen = { rung, variant };
    else if (rung < this.ladder.top || !this.ladder.isRising) this.low = Math.max(this.low, rung);
    if (is === 'impossible') this.proved.add(rung);
  }

  /** Impossible only when every way is. */
  private async *decide(rung: number): AsyncGenerator<undefined, Asked, undefined> {
    const variants = this.ladder.at(rung);
    let is: Verdict = variants.length === 0 ? 'unknown' : 'impossible';
    for (const variant of variants) {
      if (!this.trial.hasTime()) return { is: 'no-time', variant: null };
      const verdict = await this.trial.decide(variant);
      yield;
      if (verdict.is === 'possible') return { is: 'possible', variant };
      if (verdict.is === 'unknown') is = 'unknown';
    }
    return { is, variant: null };
  }

  /** Whether less is proved not to be enough: where more always allows what less does, the rung below tells; else every rung. */
  private isSmallest(rung: number): boolean {
    if (!this.trial.isWhole) return false;
    if (this.ladder.isRising) return this.proved.has(rung - 1);
    return Array.from({ length: rung }, (_, below) => below).every((below) => this.proved.has(below));
  }

  /** Rungs to plan from scratch: what was seen, then a little more. */
  private rungsFrom(rung: number): ReadonlySet<number> {
    const more = MORE.map((factor, index) => Math.max(Math.ceil(rung * factor), rung + index + 1));
    return new Set([rung, ...more].map((each) => Math.min(this.ladder.top, each)));
  }

  private async *confirm(seen: { readonly rung: number; readonly variant: Variant }): Search {
    const { kind } = this.ladder;
    for (const rung of this.rungsFrom(seen.rung)) {
      for (const variant of rung === seen.rung ? [seen.variant] : this.ladder.at(rung)) {
        if (!this.trial.hasTime()) return notSure(kind, seen.variant);
        const plan = await this.trial.planAgain(variant);
        if (plan === 'no-time') return notSure(kind, seen.variant);
        yield;
        if (plan !== 'not-found') return offer(kind, variant, rung === seen.rung && this.isSmallest(rung), plan);
      }
    }
    return notAgain(kind, seen.variant);
  }
}
