// All work in hand: accepts it, gives it turns and threads, writes down what becomes of it. Ended work leaves it and is read from the
// store. Made by openJobs.ts.
import { createHash, randomBytes } from 'node:crypto';
import type { WorkRecord } from '../../store/store.ts';
import { Problem } from '../problem.ts';
import type { BookOptions } from './bookOptions.ts';
import { FairLine } from './fairLine.ts';
import { type Ending, Job, recordOfEnding } from './job.ts';
import { runJob } from './runJob.ts';
import { askedText, type StoredAsk, storedAsk, workOf } from './storedWork.ts';
import { within } from './within.ts';
import type { Ask, Work } from './work.ts';
import { workAddress } from './workAddress.ts';

/** Ids cannot be guessed: 128 bits of chance. */
const ID_BYTES = 16;

function stopping(): Problem {
  return new Problem(503, 'The service is stopping.', { headers: { 'Retry-After': '10' } });
}

function capped(ask: Ask, mostSeconds: number): Ask {
  return { ...ask, limits: { ...ask.limits, seconds: Math.min(ask.limits.seconds, mostSeconds) } };
}

export class JobBook {
  readonly #options: BookOptions;
  readonly #jobs = new Map<string, Job>();
  readonly #line = new FairLine<Job>();
  readonly #running = new Set<Job>();
  /** Being written to the store; they hold a place already. */
  #accepting = 0;
  isClosing = false;

  constructor(options: BookOptions) {
    this.#options = options;
  }

  get running(): number {
    return this.#running.size;
  }

  get waiting(): number {
    return this.#line.length;
  }

  /** Puts what the store says is not ended back into the line, however long that becomes. */
  async takeUp(): Promise<void> {
    const { store, version, instant } = this.#options;
    for (const record of await store.openWork()) {
      const stored = storedAsk(record, version);
      if (stored === null) {
        const says = 'The service was ended before this was done, and the one that runs now cannot take it up. Ask again.';
        const failure = { says, errors: [] };
        await store.changeWork(record.id, recordOfEnding({ state: 'failed', endedAt: instant(), json: null, failure }));
        continue;
      }
      if (record.state !== 'waiting') await store.changeWork(record.id, { state: 'waiting' });
      this.#enter(record, stored);
    }
  }

  admit(): void {
    const { threads, places } = this.#options;
    if (this.isClosing) throw stopping();
    if (this.#running.size + this.#line.length + this.#accepting >= threads + places) throw this.#full();
  }

  async add(ask: Ask, client: string, asked: string, key?: string): Promise<Work> {
    const { store, version, instant, mostSeconds } = this.#options;
    if (this.isClosing) throw stopping();
    const fingerprint = createHash('sha256').update(`${ask.kind}\n${asked}`).digest('hex');
    const before = key === undefined ? null : await this.#ofKey(key, fingerprint);
    if (before !== null) return before;
    this.admit();
    const id = randomBytes(ID_BYTES).toString('base64url');
    const stored = { client, ask: capped(ask, mostSeconds) };
    const askedAt = instant();
    const text = askedText(stored, version);
    const record: WorkRecord = { id, kind: ask.kind, state: 'waiting', askedAt, endedAt: null, asked: text, answer: null };
    const location = workAddress(ask.kind, id);
    this.#accepting += 1;
    try {
      const isNew = await store.addWork(record, ...(key === undefined ? [] : [{ key, fingerprint, savedAt: askedAt, location }]));
      // Somebody was faster with the same key.
      if (!isNew) return await this.add(ask, client, asked, key);
    } finally {
      this.#accepting -= 1;
    }
    return this.#enter(record, stored).work();
  }

  async find(id: string): Promise<Work | null> {
    const job = this.#jobs.get(id);
    if (job !== undefined) return job.work();
    const record = await this.#options.store.work(id);
    return record === null ? null : workOf(record);
  }

  async made(id: string): Promise<{ readonly asked: string; readonly answer: string | null } | null> {
    // Asked before the store is: what ends meanwhile leaves the book with its answer written, but not in what was read before.
    const job = this.#jobs.get(id);
    const record = await this.#options.store.work(id);
    if (record === null) return null;
    const { asked, answer, state } = record;
    return { asked, answer: job === undefined ? (state === 'failed' ? null : answer) : job.json };
  }

  async wait(id: string, ms: number, gone: AbortSignal): Promise<Work | null> {
    const job = this.#jobs.get(id);
    if (job === undefined) return this.find(id);
    await within(job.settled, ms, gone);
    return job.work();
  }

  follow(id: string, told: (work: Work) => void): () => void {
    const job = this.#jobs.get(id);
    if (job !== undefined) return job.follow(told);
    let isFollowing = true;
    const tell = async (): Promise<void> => {
      const work = await this.find(id);
      if (work !== null && isFollowing) told(work);
    };
    tell().catch(this.#options.report);
    return () => {
      isFollowing = false;
    };
  }

  async stop(id: string): Promise<Work | null> {
    const job = this.#jobs.get(id);
    if (job === undefined) return this.find(id);
    this.#askToStop(job);
    await job.settled;
    return job.work();
  }

  abandon(id: string): void {
    const job = this.#jobs.get(id);
    if (job !== undefined) this.#askToStop(job);
  }

  async close(graceMs: number): Promise<void> {
    this.isClosing = true;
    const running = [...this.#running];
    for (const job of running) this.#askToStop(job);
    for (const job of this.#jobs.values()) if (job.state === 'waiting') job.release();
    const all = Promise.all(running.map(({ settled }) => settled));
    await within(all, graceMs);
    for (const job of this.#running) job.kill();
    await all;
    await Promise.all([...this.#jobs.values()].map(({ writing }) => writing));
  }

  /** The work first asked for with this key; null when it is new. */
  async #ofKey(key: string, fingerprint: string): Promise<Work | null> {
    const used = await this.#options.store.key(key);
    if (used === null) return null;
    // draft-ietf-httpapi-idempotency-key-header, section 2.7, as remembered, would have 422 for another request under the same key and 409
    // while the first is worked on. Here 422 always lists what is wrong with the input, and the first is answered with where it stands.
    const says = 'This Idempotency-Key was used for another request. Use a new one.';
    if (used.fingerprint !== fingerprint) throw new Problem(409, says);
    const work = await this.find(used.location.slice(used.location.lastIndexOf('/') + 1));
    if (work === null)
      throw new Problem(409, 'What was asked for with this Idempotency-Key is not kept any more. Use a new one.');
    return work;
  }

  /** Places come free one by one: Retry-After is the time between two, were every search to take all its seconds. */
  #full(): Problem {
    const { now, threads } = this.#options;
    const left = [...this.#jobs.values()].map(({ stored, state, startedAtMs }) => {
      const { seconds } = stored.ask.limits;
      return state === 'running' ? Math.max(0, seconds - (now() - startedAtMs) / 1000) : seconds;
    });
    const mean = left.reduce((sum, seconds) => sum + seconds, 0) / Math.max(1, left.length);
    const seconds = Math.max(1, Math.ceil(mean / threads));
    const says = 'Every thread is searching and the line behind them is full. Ask again a little later.';
    return new Problem(503, says, { headers: { 'Retry-After': String(seconds) } });
  }

  #enter(record: WorkRecord, stored: StoredAsk): Job {
    const job = new Job(record, stored, (one) => this.#line.ahead(one));
    this.#jobs.set(job.id, job);
    this.#line.add(stored.client, job);
    if (this.isClosing) job.release();
    this.#callNext();
    return job;
  }

  /** That fewer wait before them. */
  #tellWaiting(): void {
    for (const job of this.#jobs.values()) if (job.state === 'waiting') job.tell();
  }

  #callNext(): void {
    while (!this.isClosing && this.#running.size < this.#options.threads) {
      const job = this.#line.next();
      if (job === undefined) return;
      this.#run(job).catch(this.#options.report);
      this.#tellWaiting();
    }
  }

  async #run(job: Job): Promise<void> {
    this.#running.add(job);
    const ending = await runJob(job, this.#options);
    await this.#end(job, ending);
    this.#running.delete(job);
    this.#callNext();
  }

  #askToStop(job: Job): void {
    if (job.isAskedToStop) return;
    job.stop();
    if (!this.#line.remove(job)) return;
    this.#tellWaiting();
    const ending: Ending = { state: 'stopped', endedAt: this.#options.instant(), json: job.json, failure: null };
    this.#end(job, ending).catch(this.#options.report);
  }

  /** On disk first, then told. What cannot be written is reported, and told all the same: those who wait must not wait for ever. */
  async #end(job: Job, ending: Ending): Promise<void> {
    await job.writing;
    try {
      await this.#options.store.changeWork(job.id, recordOfEnding(ending));
    } catch (fault) {
      this.#options.report(fault, { work: job.id });
    }
    this.#jobs.delete(job.id);
    job.end(ending);
    this.#options.onEnd(job.work());
  }
}
