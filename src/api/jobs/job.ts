// One piece of work in hand: where it stands, who follows it, what was written of it. Made and moved on by jobBook.ts.
import type { WorkRecord, WorkState } from '../../store/store.ts';
import type { Search } from './crew.ts';
import { failureText, lazyWork, type StoredAsk } from './storedWork.ts';
import type { ThreadNews } from './threadTask.ts';
import type { Work, WorkFailure, WorkNews } from './work.ts';

/** Milliseconds a search has to end once it is asked to. Making the plan of its best takes a second on large days. */
const KILL_AFTER_MS = 10_000;

type Follower = (work: Work) => void;

export type Ending = {
  readonly state: Exclude<WorkState, 'waiting' | 'running'>;
  readonly endedAt: string;
  /** Answer as JSON. */
  readonly json: string | null;
  readonly failure: WorkFailure | null;
};

export class Job {
  readonly id: string;
  readonly askedAt: string;
  readonly stored: StoredAsk;
  state: WorkState = 'waiting';
  endedAt: string | null = null;
  json: string | null;
  news: WorkNews | null = null;
  failure: WorkFailure | null = null;
  /** While it runs. */
  search: Search | null = null;
  /** By the clock of the line, while it runs. */
  startedAtMs = 0;
  /** When its best so far was last written, by the clock of the line. */
  keptAtMs = Number.NEGATIVE_INFINITY;
  isAskedToStop = false;
  isKilled = false;
  #killTimer: NodeJS.Timeout | undefined;
  /** Writes to the store, one after the other. */
  writing: Promise<void> = Promise.resolve();
  /** Resolves when it has ended, or when the service closes before its turn. */
  readonly settled: Promise<void>;
  #settle: () => void = () => {};
  readonly #followers = new Set<Follower>();
  readonly #aheadOf: (job: Job) => number;

  constructor({ id, askedAt, answer }: WorkRecord, stored: StoredAsk, aheadOf: (job: Job) => number) {
    this.id = id;
    this.askedAt = askedAt;
    this.json = answer;
    this.stored = stored;
    this.#aheadOf = aheadOf;
    this.settled = new Promise((resolve) => {
      this.#settle = resolve;
    });
  }

  get kind(): Work['kind'] {
    return this.stored.ask.kind;
  }

  work(): Work {
    const { id, kind, state, askedAt, endedAt, news, failure } = this;
    const ahead = state === 'waiting' ? this.#aheadOf(this) : 0;
    return lazyWork({ id, kind, state, askedAt, endedAt, ahead, news, failure }, this.json);
  }

  follow(told: Follower): () => void {
    this.#followers.add(told);
    told(this.work());
    return () => {
      this.#followers.delete(told);
    };
  }

  tell(): void {
    if (this.#followers.size === 0) return;
    const work = this.work();
    for (const told of this.#followers) told(work);
  }

  hear({ news, best }: ThreadNews): void {
    this.news = news;
    if (best !== null) this.json = best;
    this.tell();
  }

  /** Somebody wants no more of it than its best so far. */
  stop(): void {
    this.isAskedToStop = true;
    this.endSoon();
  }

  /** Asks its search to end; one that does not is ended with its thread. */
  endSoon(): void {
    if (this.search === null) return;
    this.search.stop();
    this.#killTimer ??= setTimeout(() => this.kill(), KILL_AFTER_MS);
  }

  kill(): void {
    this.isKilled = true;
    this.search?.kill();
  }

  end({ state, endedAt, json, failure }: Ending): void {
    this.state = state;
    this.endedAt = endedAt;
    this.json = json;
    this.failure = failure;
    this.search = null;
    clearTimeout(this.#killTimer);
    this.tell();
    this.#settle();
  }

  /** Lets go whoever waits, though it has not ended. */
  release(): void {
    this.tell();
    this.#settle();
  }
}

/** What the store is told of an ending. */
export function recordOfEnding({ state, endedAt, json, failure }: Ending): Pick<WorkRecord, 'state' | 'endedAt' | 'answer'> {
  return { state, endedAt, answer: failure === null ? json : failureText(failure) };
}
