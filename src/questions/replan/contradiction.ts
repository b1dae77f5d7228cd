// Something told that cannot be, given the rest: in words, with what to do. Used by soFar.ts.
import type { HappenedCode } from '../../model/happenedCodes.ts';
import type { Booking } from './diary.ts';
import type { Fact } from './facts.ts';
import type { Job } from './runs.ts';

export type Contradiction = { readonly code: HappenedCode; readonly fact: Fact; readonly says: string; readonly doThis: string };

type Says = (minute: number) => string;

/** `begin`: when it is told to have begun, loading included. */
export function notBegunBefore(job: Job, before: Job, fact: Fact, begin: number, says: Says): Contradiction {
  return {
    code: 'NOT_BEGUN_BEFORE',
    fact,
    says: `${job.task.id} cannot have begun at ${says(begin + job.load)}: ${before.task.id} had not begun by then.`,
    doThis: `Say when ${before.task.id} began, or correct the time.`,
  };
}

export function alreadyBusy(job: Job, person: string, other: Booking, fact: Fact, begin: number, says: Says): Contradiction {
  const busy = `${person} was at ${other.taskId} from ${says(other.from)} to ${says(other.until)}`;
  return {
    code: 'ALREADY_BUSY',
    fact,
    says: `${job.task.id} cannot have begun at ${says(begin + job.load)}: ${busy}.`,
    doThis: `Say when ${other.taskId} ended, or correct the time.`,
  };
}

export function alreadyFull(job: Job, there: readonly string[], fact: Fact, begin: number, says: Says): Contradiction {
  return {
    code: 'ALREADY_FULL',
    fact,
    says: `${job.task.id} cannot have begun at ${says(begin + job.load)}: ${job.task.place?.id} was full (${there.join(', ')}).`,
    doThis: 'Say when what was there ended, or correct the time.',
  };
}

/** `began`: when it began, as far as it has. */
export function cannotHaveEnded(job: Job, began: number | undefined, fact: Fact, says: Says): Contradiction {
  const when = began === undefined ? 'had not begun' : `began at ${says(began)}`;
  return {
    code: 'NOT_BEGUN_BEFORE',
    fact,
    says: `${job.task.id} cannot have ended at ${says(fact.end ?? 0)}: by the plan and what is told, it ${when}.`,
    doThis: `Say when ${job.task.id} began as well.`,
  };
}
