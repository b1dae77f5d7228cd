// Runs the lanes of a solve, on one thread or on two, and merges what they find. Where rounds are counted every lane works
// the same stretches from the same news however many threads there are, and the outcome is the same to the last bit.
import type { Argued } from './bounds/bestBound.ts';
import { type Found, Lane, type LaneTask, type News } from './lane.ts';
import { LaneElsewhere, type Thread } from './laneElsewhere.ts';
import type { ThreadStart } from './laneThread.ts';
import { emptyLayout } from './layout.ts';
import type { Shop } from './shop.ts';
import { startLaneThread } from './startLaneThread.ts';

/** Lanes of every solve, in the order in which news of one price wins. */
const TASKS: readonly LaneTask[] = ['improve', 'prove'];

/** Rounds of a stretch where rounds are counted. */
const ROUNDS_PER_STRETCH = 150;

/** Milliseconds of a stretch on this thread, by lane, and on a thread of its own, where the clock decides. */
const STRETCH_MS = 30;
const SHARED_STRETCH_MS: Readonly<Record<LaneTask, number>> = { improve: 28, prove: 12 };
const THREAD_STRETCH_MS = 100;

/** Milliseconds a search that is over waits for what the lane elsewhere has found. */
const LAST_WAIT_MS = 100;

/** What a crew is told between stretches. */
export type Orders = { readonly heat: number; readonly roundsLeft: number; readonly untilMs: number };

export type CrewOptions = {
  readonly workers: number;
  /** Whether every schedule accepted is counted again, slowly. */
  readonly isAudited: boolean;
  /** Whether the lane elsewhere, if there is one, argues the floor before all else. Default false. */
  readonly argues?: boolean;
  /** Where the clock decides: whether the lane that proves first looks for schedules for one pair of hands. Default false. */
  readonly serves?: boolean;
  readonly now: () => number;
  /** Default: a thread of this process. */
  readonly startThread?: (start: ThreadStart) => Thread;
  /** Takes a thread that is not needed any more and has nothing to do. Default: it is ended. */
  readonly keepThread?: (thread: Thread) => void;
};

export class Crew {
  private readonly local: readonly { readonly lane: Lane; readonly task: LaneTask }[];
  private readonly thread: LaneElsewhere | null;
  private readonly now: () => number;
  private readonly serves: boolean;
  private readonly keepThread: CrewOptions['keepThread'];
  private pending: Pending | null = null;
  private isScouted = false;
  private stopping: Promise<void> | null = null;
  news: News;
  rounds = 0;
  /** Whether some lane has nothing left to do. */
  isDone = false;

  constructor(
    shop: Shop,
    seed: number,
    { workers, isAudited, argues = false, serves = false, now, startThread = startLaneThread, keepThread }: CrewOptions,
  ) {
    this.news = { layout: emptyLayout(shop), total: Number.POSITIVE_INFINITY, isComplete: false, floor: 0 };
    this.now = now;
    this.serves = serves;
    this.keepThread = keepThread;
    const [improve, prove] = TASKS.map((task, i) => ({ task, seed: seed + i * 7919 })) as [LaneStart, LaneStart];
    if (workers > 1) {
      const ended = new Int32Array(new SharedArrayBuffer(4));
      this.thread = new LaneElsewhere(startThread({ problem: shop.problem, ...prove, isAudited, argues, ended }), ended);
    } else this.thread = null;
    const here = this.thread === null ? [improve, prove] : [improve];
    this.local = here.map((start) => ({ lane: new Lane(shop, start.seed, start.task, isAudited), task: start.task }));
  }

  /** What the lane elsewhere has argued by now; null before, and where it was not to. */
  get argued(): Argued | null {
    return this.thread?.argued ?? null;
  }

  /** Lets the lane elsewhere, if there is one, raise the floor while there is no schedule yet. Only where the clock decides. */
  proveAhead(floor: number): void {
    this.news = { ...this.news, floor };
    if (this.thread !== null) this.askElsewhere(this.thread, 0);
  }

  /** Builds ahead on this thread what the lane that improves begins with. */
  prepare(): void {
    this.local.find(({ task }) => task === 'improve')?.lane.prepare();
  }

  /** A schedule to go on from; `isScouted`: one lane looks elsewhere first. */
  begin(news: News, isScouted: boolean): void {
    this.isScouted = isScouted;
    this.news = { ...news, floor: Math.max(news.floor, this.news.floor) };
  }

  /** Works for one stretch. Returns whether anything was found. */
  async work(orders: Orders): Promise<boolean> {
    const before = this.news;
    if (orders.roundsLeft !== Number.POSITIVE_INFINITY) await this.workByRounds(orders);
    else await this.workByClock(orders);
    return this.news.total < before.total || this.news.floor > before.floor;
  }

  /** Every lane works as many rounds from the same news; what they find is merged in their order. */
  private async workByRounds({ heat, roundsLeft, untilMs }: Orders): Promise<void> {
    const rounds = Math.max(1, Math.min(ROUNDS_PER_STRETCH, Math.ceil(roundsLeft / TASKS.length)));
    const { news } = this;
    const stretch = { rounds, heat, untilMs, isScouted: this.isScouted };
    const elsewhere = this.thread?.run(news, stretch);
    // Where a lane here fails, that is what is told, and nobody waits for the one elsewhere any more.
    elsewhere?.catch(() => {});
    const found = this.local.map(({ lane }) => lane.run(news, stretch, this.now));
    if (elsewhere !== undefined) found.push(await this.foundInTime(elsewhere, untilMs));
    for (const one of found) this.merge(one);
  }

  private async foundInTime(elsewhere: Promise<Found>, untilMs: number): Promise<Found> {
    const timer = setTimeout(() => this.thread?.end(), Math.min(2 ** 30, Math.max(1, untilMs - this.now())));
    try {
      return await elsewhere;
    } finally {
      clearTimeout(timer);
    }
  }

  /** The lane here works a stretch; the one elsewhere goes on meanwhile, and is asked again when it has answered. */
  private async workByClock({ heat, untilMs }: Orders): Promise<void> {
    const rounds = Number.POSITIVE_INFINITY;
    for (const { lane, task } of this.local) {
      const length = this.thread === null ? SHARED_STRETCH_MS[task] : STRETCH_MS;
      if (this.isDone || this.now() >= untilMs) return;
      this.merge(
        lane.run(
          this.news,
          { rounds, heat, untilMs: Math.min(untilMs, this.now() + length), isScouted: this.isScouted, isServed: this.serves },
          this.now,
        ),
      );
    }
    const { thread } = this;
    if (thread === null) return;
    if (this.pending !== null) {
      if (this.now() - this.pending.startedAt >= THREAD_STRETCH_MS || this.isDone) thread.end();
      await new Promise((resume) => setImmediate(resume));
      this.takeAnswer();
    }
    // Asked again at once: what it learned goes on, and it does not wait for this thread.
    if (this.pending === null && !this.isDone) this.askElsewhere(thread, heat);
  }

  /** It works until it is told to end. */
  private askElsewhere(thread: LaneElsewhere, heat: number): void {
    const stretch = {
      rounds: Number.POSITIVE_INFINITY,
      heat,
      untilMs: Number.POSITIVE_INFINITY,
      isScouted: this.isScouted,
      isServed: this.serves,
    };
    const pending: Pending = { found: null, failure: null, startedAt: this.now(), answer: Promise.resolve() };
    pending.answer = thread.run(this.news, stretch).then(
      (found) => {
        pending.found = found;
      },
      (error: Error) => {
        pending.failure = error;
      },
    );
    this.pending = pending;
  }

  private takeAnswer(): void {
    if (this.pending === null) return;
    if (this.pending.failure !== null) throw this.pending.failure;
    if (this.pending.found === null) return;
    this.merge(this.pending.found);
    this.pending = null;
  }

  private merge(found: Found): void {
    this.rounds += found.rounds;
    const floor = Math.max(this.news.floor, found.floor);
    const isBetter = found.layout !== null && found.total < this.news.total;
    this.news = isBetter
      ? { layout: found.layout, total: found.total, isComplete: found.isComplete, floor }
      : { ...this.news, floor };
    if (found.isDone) this.isDone = true;
  }

  /**
   * Ends the search of all threads; what the lane elsewhere has found by now still counts. Rejects when its thread had died. Asked again,
   * it is the same end.
   */
  stop(): Promise<void> {
    this.stopping ??= this.thread === null ? Promise.resolve() : this.endThread(this.thread);
    return this.stopping;
  }

  /** Resolves when the lane elsewhere has answered, or has not in time: some of its steps are long. */
  private async answered(pending: Pending): Promise<void> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<void>((resume) => {
      timer = setTimeout(resume, LAST_WAIT_MS);
    });
    await Promise.race([pending.answer, late]);
    clearTimeout(timer);
  }

  private async endThread(thread: LaneElsewhere): Promise<void> {
    try {
      // One that is still waking has found nothing, and is not waited for.
      if (this.pending !== null && thread.isAwake) {
        thread.end();
        await this.answered(this.pending);
        this.takeAnswer();
      }
      if (thread.failure !== null) throw thread.failure;
    } finally {
      await thread.stop(this.keepThread);
    }
  }
}

type Pending = { found: Found | null; failure: Error | null; readonly startedAt: number; answer: Promise<void> };

type LaneStart = { readonly task: LaneTask; readonly seed: number };
