// Work as the store keeps it: what was asked so that it can be asked again, and what came out. Used by jobBook.ts.
import * as z from 'zod';
import { WORK_KINDS, type WorkRecord } from '../../store/store.ts';
import type { Ask, Work, WorkFailure } from './work.ts';

/** What the store holds under `asked`. The ask itself was read at the door before it was written, so only its outside is looked at. */
const askedSchema = z.strictObject({
  version: z.string(),
  client: z.string(),
  ask: z.looseObject({ kind: z.enum(WORK_KINDS), limits: z.looseObject({ seconds: z.number() }) }),
});

export type StoredAsk = { readonly client: string; readonly ask: Ask };

export function askedText({ client, ask }: StoredAsk, version: string): string {
  return JSON.stringify({ version, client, ask });
}

function isAsk(ask: z.infer<typeof askedSchema>['ask'], kind: Ask['kind']): ask is typeof ask & Ask {
  return ask.kind === kind;
}

/** Null when this program cannot take it up: another version wrote it, or it is none of ours. */
export function storedAsk({ asked, kind }: WorkRecord, version: string): StoredAsk | null {
  let value: unknown;
  try {
    value = JSON.parse(asked);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  const read = askedSchema.safeParse(value);
  if (!read.success || read.data.version !== version) return null;
  const { ask, client } = read.data;
  return isAsk(ask, kind) ? { ask, client } : null;
}

/** Of failed work the store holds, in the place of an answer, why there is none. */
export function failureText(failure: WorkFailure): string {
  return JSON.stringify(failure);
}

/** Work whose answer is taken apart only when somebody looks at it: most who ask for news do not. */
export function lazyWork(work: Omit<Work, 'answer'>, answer: string | null): Work {
  let parsed: Work['answer'] | undefined;
  return {
    ...work,
    get answer() {
      if (parsed === undefined) parsed = answer === null ? null : JSON.parse(answer);
      return parsed ?? null;
    },
  };
}

/** Work that is not in hand any more, or not yet. */
export function workOf(record: WorkRecord): Work {
  const { id, kind, state, askedAt, endedAt, answer } = record;
  const isFailed = state === 'failed';
  const failure: WorkFailure | null = isFailed && answer !== null ? JSON.parse(answer) : null;
  return lazyWork({ id, kind, state, askedAt, endedAt, ahead: 0, news: null, failure }, isFailed ? null : answer);
}
