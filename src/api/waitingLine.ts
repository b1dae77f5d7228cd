// One search at a time and a short line of those who wait for it; past that, 503. Used by plans.ts, stopped by service.ts.
import { Problem } from './problem.ts';

type Turn = { readonly seconds: number; readonly begin: () => void; readonly refuse: (problem: Problem) => void };

function full(seconds: number): Problem {
  const detail = 'Another plan is being made and the line behind it is full. Ask again a little later.';
  return new Problem(503, detail, { headers: { 'Retry-After': String(Math.ceil(seconds)) } });
}

function stopped(): Problem {
  return new Problem(503, 'The service is stopping.', { headers: { 'Retry-After': '10' } });
}

/** How many may wait behind the one whose turn it is. */
const USUAL_PLACES = 8;

export class WaitingLine {
  readonly #places: number;
  #waiting: readonly Turn[] = [];
  /** Seconds the search now running may take; undefined when none runs. */
  #running: number | undefined;
  #isStopping = false;

  constructor(places = USUAL_PLACES) {
    this.#places = places;
  }

  get isPlanning(): boolean {
    return this.#running !== undefined;
  }

  get waiting(): number {
    return this.#waiting.length;
  }

  /**
   * Does the work when its turn comes; `seconds` is how long it may take. The work is to end soon once it is cancelled:
   * the client has gone, or the service stops. Undefined when the client went away before its turn.
   */
  async take<T>(seconds: number, gone: AbortSignal, work: (isCancelled: () => boolean) => Promise<T>): Promise<T | undefined> {
    if (this.#isStopping) throw stopped();
    if (gone.aborted) return undefined;
    if (this.#running === undefined) this.#running = seconds;
    else if (!(await this.#turn(seconds, gone))) return undefined;
    try {
      return await work(() => gone.aborted || this.#isStopping);
    } finally {
      this.#callNext();
    }
  }

  /** Cancels the search that runs, sends those who wait away, and lets nobody in any more. */
  stop(): void {
    this.#isStopping = true;
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const turn of waiting) turn.refuse(stopped());
  }

  /** Resolves true when the turn has come, false when the client left the line before. */
  #turn(seconds: number, gone: AbortSignal): Promise<boolean> {
    if (this.#waiting.length >= this.#places) throw full(this.#running ?? seconds);
    return new Promise((resolve, reject) => {
      const turn: Turn = { seconds, begin: () => resolve(true), refuse: reject };
      this.#waiting = [...this.#waiting, turn];
      gone.addEventListener('abort', () => {
        this.#waiting = this.#waiting.filter((other) => other !== turn);
        resolve(false);
      });
    });
  }

  /** The turn passes from hand to hand, so that nobody who comes meanwhile steps in between. */
  #callNext(): void {
    const [next, ...others] = this.#waiting;
    this.#waiting = others;
    this.#running = next?.seconds;
    next?.begin();
  }
}
