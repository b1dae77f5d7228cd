// A lane on a thread of its own, as crew.ts sees it: asked for stretches, told to end them, stopped. Whatever becomes of the
// thread, who waits for its answer gets one: what it found, or what went wrong.
import type { Argued } from './bounds/bestBound.ts';
import type { Found, News, Stretch } from './lane.ts';
import type { ThreadAnswer, ThreadAsk, ThreadStart } from './laneThread.ts';

/** What is used of a Worker; tests put others in its place. */
export type Thread = {
  on(event: 'message', told: (answer: ThreadAnswer) => void): unknown;
  on(event: 'error' | 'messageerror', failed: (error: Error) => void): unknown;
  on(event: 'exit', ended: (code: number) => void): unknown;
  removeAllListeners(): unknown;
  postMessage(message: ThreadStart | ThreadAsk): void;
  ref(): void;
  unref(): void;
  terminate(): Promise<unknown>;
};

type Waiting = { readonly done: (found: Found) => void; readonly fail: (error: Error) => void };

export class LaneElsewhere {
  private readonly thread: Thread;
  private readonly ended: Int32Array;
  private number = 0;
  private waiting: Waiting | null = null;
  private isAsked = false;
  /** Whether it has said that it is ready. */
  isAwake = false;
  /** What it has argued, where it was to. */
  argued: Argued | null = null;
  /** What it died of. */
  failure: Error | null = null;

  /** `ended`: one number, which the thread reads as well; stretches up to this one are to end. */
  constructor(thread: Thread, ended: Int32Array) {
    this.thread = thread;
    this.ended = ended;
    thread.on('message', ({ number, found, argued }) => {
      this.isAwake = true;
      this.argued = argued ?? this.argued;
      if (number !== this.number || found === null) return;
      this.isAsked = false;
      this.waiting?.done(found);
    });
    thread.on('error', (error) => this.fail(error));
    thread.on('messageerror', (error) => this.fail(error));
    // A thread can end without an error, and then never answers.
    thread.on('exit', (code) => this.fail(new Error(`The thread of a lane has ended, with ${code}`)));
    thread.unref();
  }

  /** Rejects when the thread has died, or dies before it answers. */
  run(news: News, stretch: Stretch): Promise<Found> {
    this.number++;
    const ask: ThreadAsk = { number: this.number, news, stretch };
    return new Promise((done, fail) => {
      if (this.failure !== null) {
        fail(this.failure);
        return;
      }
      this.waiting = { done, fail };
      this.isAsked = true;
      this.thread.ref();
      this.thread.postMessage(ask);
    });
  }

  /** Ends the stretch that is running. */
  end(): void {
    Atomics.store(this.ended, 0, this.number);
  }

  /** Ends the thread; a stretch that is running has no answer any more. One that has nothing to do is handed to `keep`, if given. */
  async stop(keep?: (thread: Thread) => void): Promise<void> {
    const isFree = this.isAwake && !this.isAsked && this.failure === null;
    if (isFree && keep !== undefined) {
      this.thread.removeAllListeners();
      keep(this.thread);
      return;
    }
    this.end();
    await this.thread.terminate();
  }

  private fail(error: Error): void {
    this.failure ??= error;
    this.waiting?.fail(this.failure);
  }
}
