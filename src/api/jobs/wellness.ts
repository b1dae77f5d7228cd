// Whether days can be planned: asked of a thread, one question at a time however many ask, and answered from what was found a moment ago
// while the next question is on its way. Used by openJobs.ts for /healthz.

/** Milliseconds for which what was found is good enough, and for which it is told while it is looked up anew. */
const FRESH_MS = 1_000;
const STALE_MS = 5_000;

export type WellnessOptions = {
  readonly now: () => number;
  readonly planTinyDay: () => Promise<boolean>;
  readonly report: (fault: unknown) => void;
};

export class Wellness {
  readonly #options: WellnessOptions;
  #asking: Promise<boolean> | null = null;
  #found = false;
  #foundAtMs = Number.NEGATIVE_INFINITY;

  constructor(options: WellnessOptions) {
    this.#options = options;
  }

  /** False too when no answer comes within `ms`. */
  async isWell(ms: number): Promise<boolean> {
    const age = this.#options.now() - this.#foundAtMs;
    if (age < FRESH_MS) return this.#found;
    this.#asking ??= this.#ask();
    // What failed is asked again before it is told again.
    if (age < STALE_MS && this.#found) return true;
    return this.#within(this.#asking, ms);
  }

  async #ask(): Promise<boolean> {
    const { now, planTinyDay, report } = this.#options;
    try {
      this.#found = await planTinyDay();
    } catch (fault) {
      report(fault);
      this.#found = false;
    }
    this.#foundAtMs = now();
    this.#asking = null;
    return this.#found;
  }

  async #within(asking: Promise<boolean>, ms: number): Promise<boolean> {
    let timer: NodeJS.Timeout | undefined;
    const tooLate = new Promise<boolean>((resolve) => {
      timer = setTimeout(() => resolve(false), ms);
    });
    const isWell = await Promise.race([asking, tooLate]);
    clearTimeout(timer);
    return isWell;
  }
}
