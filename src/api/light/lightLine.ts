// The line before the light threads: clients take turns, so many may wait, and who has gone is not served. Used by openJobs.ts.
import { ClientGone } from '../goneSignal.ts';
import { FairLine } from '../jobs/fairLine.ts';
import { Problem } from '../problem.ts';
import type { Answer, Done, Given, LightKind } from './lightWork.ts';

/** Whom it is for: a client, for fair turns, and when it does not wait for it any more. */
export type Asker = { readonly client: string; readonly gone: AbortSignal };

export type LightLineOptions = {
  /** Does it in a thread. */
  readonly run: <K extends LightKind>(kind: K, given: Given<K>) => Promise<Done<K>>;
  /** How many are done at once, 1 or more. */
  readonly threads: number;
  /** How many may wait, 0 or more. */
  readonly places: number;
};

type Waiting = { readonly call: () => void; readonly refuse: (why: Error) => void };

function stopping(): Problem {
  return new Problem(503, 'The service is stopping.', { headers: { 'Retry-After': '10' } });
}

/** A place comes free as soon as one of them is done, which takes a fraction of a second. */
function full(): Problem {
  return new Problem(503, 'Too many requests wait to be read. Ask again a little later.', { headers: { 'Retry-After': '1' } });
}

export class LightLine {
  readonly #options: LightLineOptions;
  readonly #line = new FairLine<Waiting>();
  #running = 0;
  #isClosed = false;

  constructor(options: LightLineOptions) {
    this.#options = options;
  }

  get waiting(): number {
    return this.#line.length;
  }

  /** Throws a Problem: what is wrong with what was given, or 503 when the line is full or closed. ClientGone when nobody waits for it. */
  async do<K extends LightKind>(kind: K, given: Given<K>, asker: Asker): Promise<Answer<K>> {
    await this.#turn(asker);
    const done = await this.#options
      .run(kind, given)
      // A thread that is ended with the service leaves what it was at: that is no fault.
      .catch((fault: unknown) => Promise.reject(this.#isClosed ? stopping() : fault))
      .finally(() => this.#leave());
    if (done.ok) return done.answer;
    const { status, detail, errors, headers } = done.refusal;
    throw new Problem(status, detail, { errors, headers });
  }

  /** Lets nobody in any more, and refuses who waits. */
  close(): void {
    this.#isClosed = true;
    for (let one = this.#line.next(); one !== undefined; one = this.#line.next()) one.refuse(stopping());
  }

  /** Resolves when it is its turn; a thread is then held for it. */
  async #turn({ client, gone }: Asker): Promise<void> {
    const { threads, places } = this.#options;
    if (this.#isClosed) throw stopping();
    if (gone.aborted) throw new ClientGone();
    if (this.#running < threads) {
      this.#running += 1;
      return;
    }
    if (this.#line.length >= places) throw full();
    await this.#wait(client, gone);
  }

  async #wait(client: string, gone: AbortSignal): Promise<void> {
    let leave = (): void => {};
    const turn = new Promise<void>((resolve, reject) => {
      const waiting: Waiting = { call: resolve, refuse: reject };
      leave = () => {
        if (this.#line.remove(waiting)) reject(new ClientGone());
      };
      this.#line.add(client, waiting);
    });
    gone.addEventListener('abort', leave);
    await turn.finally(() => gone.removeEventListener('abort', leave));
  }

  /** The thread goes to the next in the line. */
  #leave(): void {
    const next = this.#line.next();
    if (next === undefined) this.#running -= 1;
    else next.call();
  }
}
