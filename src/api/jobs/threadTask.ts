// What is sent to a thread and what comes back. Plans and answers travel as JSON: text is passed on without being taken apart on the
// event loop. Used by openCrew.ts and workThread.ts.
import type { MessagePort } from 'node:worker_threads';
import type { InputError } from '../../model/inputError.ts';
import type { Given, LightKind } from '../light/lightWork.ts';
import type { Ask, WorkNews } from './work.ts';

export type AnswerTask = {
  readonly do: 'answer';
  readonly ask: Ask;
  /** One shared number: 1 asks the search to end with its best. */
  readonly stop: Int32Array;
  readonly port: MessagePort;
  /** Version of this program. */
  readonly version: string;
};

/** `given` is that of the kind. */
export type LightTask = { readonly do: 'light'; readonly kind: LightKind; readonly given: Given<LightKind> };

/** Does of everything a little, so that what it needs is loaded. */
export type WarmUpTask = { readonly do: 'warm up'; readonly version: string };

/** Plans a day of one tray. */
export type TinyDayTask = { readonly do: 'plan a tiny day'; readonly version: string };

export type ThreadTask = AnswerTask | LightTask | WarmUpTask | TinyDayTask;

/** `best`: the best plan so far as JSON, where there is a better one than was told before. */
export type ThreadNews = { readonly news: WorkNews; readonly best: string | null };

export type ThreadAnswer =
  | { readonly ok: true; readonly json: string }
  | { readonly ok: false; readonly errors: readonly InputError[] };
