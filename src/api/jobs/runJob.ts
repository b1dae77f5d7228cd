// Runs one piece of work in a thread: hears what it tells, keeps its best now and then, and sees to it that it ends. Used by jobBook.ts.
import type { BookOptions } from './bookOptions.ts';
import type { Ending, Job } from './job.ts';
import type { ThreadAnswer } from './threadTask.ts';
import type { Ask } from './work.ts';

/** The best so far is written at most so often, in milliseconds. */
const KEEP_EVERY_MS = 3_000;

/** A search that is this late, in milliseconds, is asked to end. */
const LATE_MS = 10_000;

const OUR_FAULT = 'This is a fault of ovenward, not of your request.';
const BROKEN_OFF = 'The search did not end when it was asked to and was broken off before there was a plan.';

type RunOptions = Pick<BookOptions, 'store' | 'now' | 'instant' | 'report' | 'crew'>;

/** Taken up again, a plan goes on from the best that was kept: nobody gets a worse one than was there before. */
function askOf({ stored: { ask }, json }: Job): Ask {
  return ask.kind === 'plan' && json !== null ? { ...ask, startFrom: JSON.parse(json) } : ask;
}

function write(job: Job, { store, report }: RunOptions, changes: Parameters<RunOptions['store']['changeWork']>[1]): void {
  job.writing = job.writing
    .then(() => store.changeWork(job.id, changes))
    .catch((fault: unknown) => report(fault, { work: job.id }));
}

/** Begins the search; what it tells goes into the job. */
function begin(job: Job, options: RunOptions): Promise<ThreadAnswer> {
  const { crew, now } = options;
  job.state = 'running';
  job.startedAtMs = now();
  job.search = crew.search(askOf(job), (told) => {
    if (job.state !== 'running') return;
    job.hear(told);
    if (told.best === null || now() - job.keptAtMs < KEEP_EVERY_MS) return;
    job.keptAtMs = now();
    write(job, options, { answer: told.best });
  });
  if (job.isAskedToStop) job.endSoon();
  job.tell();
  return job.search.answer;
}

function endingOf(answer: ThreadAnswer, job: Job, endedAt: string): Ending {
  if (answer.ok) return { state: job.isAskedToStop ? 'stopped' : 'done', endedAt, json: answer.json, failure: null };
  const count = answer.errors.length;
  const says = count === 1 ? '1 thing to put right.' : `${count} things to put right.`;
  return { state: 'failed', endedAt, json: null, failure: { says, errors: answer.errors } };
}

/** Never rejects: whatever goes wrong is an ending too. */
export async function runJob(job: Job, options: RunOptions): Promise<Ending> {
  const { instant, report } = options;
  let late: NodeJS.Timeout | undefined;
  try {
    const answer = begin(job, options);
    late = setTimeout(() => job.endSoon(), job.stored.ask.limits.seconds * 1000 + LATE_MS);
    return endingOf(await answer, job, instant());
  } catch (fault) {
    if (job.isKilled) {
      const { json } = job;
      const failure = json === null ? { says: BROKEN_OFF, errors: [] } : null;
      return { state: json === null ? 'failed' : 'stopped', endedAt: instant(), json, failure };
    }
    report(fault, { work: job.id });
    return { state: 'failed', endedAt: instant(), json: null, failure: { says: OUR_FAULT, errors: [] } };
  } finally {
    clearTimeout(late);
  }
}
