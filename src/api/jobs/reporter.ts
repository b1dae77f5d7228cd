// Tells of a search while it runs, seldom enough not to be felt: news at most four times a second, the best plan at most once a second.
// Used by workThread.ts.
import type { Plan } from '../../model/plan.ts';
import type { Progress } from '../../planning.ts';
import type { ThreadNews } from './threadTask.ts';

const NEWS_EVERY_MS = 250;
const BEST_EVERY_MS = 1_000;

/** A search that is over by then needs no plan so far: it comes with its own. */
const FIRST_BEST_MS = 500;

/** Making a plan of the best so far takes at most this share of the time since the last one. */
const BEST_SHARE = 0.1;

/** Late in the time of a search no plan is made any more: the last one comes soon, and this one could make it late. */
const BEST_UNTIL = 0.8;

export type ReporterOptions = {
  readonly now: () => number;
  readonly seconds: number;
  readonly tell: (news: ThreadNews) => void;
};

export class Reporter {
  readonly #options: ReporterOptions;
  readonly #startedAtMs: number;
  #toldAtMs = Number.NEGATIVE_INFINITY;
  #bestAtMs: number;
  #bestTookMs = 0;
  #bestCost = Number.POSITIVE_INFINITY;
  #best: string | null = null;
  /** The cheapest so far, of which there may be no plan yet. */
  #soFar: { readonly cost: number; readonly plan: () => Plan } | null = null;
  #last: { readonly progress: Progress | null; readonly says: string } | null = null;
  #isUntold = false;

  constructor(options: ReporterOptions) {
    this.#options = options;
    this.#startedAtMs = options.now();
    this.#bestAtMs = this.#startedAtMs + FIRST_BEST_MS - BEST_EVERY_MS;
  }

  progress(progress: Progress, planSoFar: () => Plan): void {
    this.#soFar = { cost: progress.cost, plan: planSoFar };
    this.#hear(progress, progress.changed);
  }

  step(says: string): void {
    this.#hear(null, says);
  }

  #hear(progress: Progress | null, says: string): void {
    this.#last = { progress, says };
    this.#isUntold = true;
    this.tellInTime();
  }

  /** To be called often: tells what waits to be told once it may be. */
  tellInTime(): void {
    this.#makeBest();
    const nowMs = this.#options.now();
    if (this.#last === null || (!this.#isUntold && this.#best === null) || nowMs - this.#toldAtMs < NEWS_EVERY_MS) return;
    const seconds = Math.round(nowMs - this.#startedAtMs) / 1000;
    this.#options.tell({ news: { ...this.#last, seconds }, best: this.#best });
    this.#toldAtMs = nowMs;
    this.#isUntold = false;
    this.#best = null;
  }

  #makeBest(): void {
    if (this.#soFar === null) return;
    const { cost, plan } = this.#soFar;
    const { now, seconds } = this.#options;
    const startMs = now();
    const isLate = this.#bestCost < Number.POSITIVE_INFINITY && startMs - this.#startedAtMs > BEST_UNTIL * seconds * 1000;
    const everyMs = Math.max(BEST_EVERY_MS, this.#bestTookMs / BEST_SHARE);
    if (isLate || cost >= this.#bestCost || startMs - this.#bestAtMs < everyMs) return;
    this.#best = JSON.stringify(plan());
    this.#bestCost = cost;
    this.#bestAtMs = now();
    this.#bestTookMs = this.#bestAtMs - startMs;
  }
}
