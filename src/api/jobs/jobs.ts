// The work of the service as its routes see it. Made by openJobs.ts, which holds the line, the threads and the store together.
import type { Asker } from '../light/lightLine.ts';
import type { Answer, Given, LightKind } from '../light/lightWork.ts';
import type { Ask, Work } from './work.ts';

export interface Jobs {
  /**
   * Accepts work, or throws a Problem: 503 with Retry-After when the line is full or the service stops, 409 when the key was used for
   * another request. Resolves once it is on disk. With a key used before for the same request it is the work of then.
   *
   * @param client - whose it is, for fair turns: a name or an address.
   * @param asked - the request as JSON, for the store and for the fingerprint of the key.
   */
  add(ask: Ask, client: string, asked: string, key?: string): Promise<Work>;
  /** Throws what `add` would throw of a full line or a service that stops: asked before a body is read. */
  admit(): void;
  /** Null when there is none of this id. */
  find(id: string): Promise<Work | null>;
  /** What was kept of its request and its answer, of a plan that is being made its best so far, as JSON. Null when there is none. */
  made(id: string): Promise<{ readonly asked: string; readonly answer: string | null } | null>;
  /** Resolves with the work when it has ended, when `ms` are over, or when `gone` says that nobody waits any more. */
  wait(id: string, ms: number, gone: AbortSignal): Promise<Work | null>;
  /** Calls `told` with every change from now on, the state first; the function returned ends that. */
  follow(id: string, told: (work: Work) => void): () => void;
  /** Takes it out of the line, or ends its search and keeps its best. Resolves when that is done; null when there is none. */
  stop(id: string): Promise<Work | null>;
  /** Frees work that was only asked for somebody who has gone: ended if it has not ended. */
  abandon(id: string): void;
  /** For `/metrics` and `/healthz`. */
  readonly running: number;
  readonly waiting: number;
  /** For `/metrics`: how much light work waits for a thread. */
  readonly lightWaiting: number;
  /** Whether nobody is let in any more. */
  readonly isClosing: boolean;
  /** Has a day of one tray planned by a thread, within `ms`. */
  isWell(ms: number): Promise<boolean>;
  /**
   * Has light work done, away from the event loop. Throws a Problem for what is wrong with what was given, and 503 with Retry-After when
   * too many wait or the service has stopped.
   */
  light<K extends LightKind>(kind: K, given: Given<K>, asker: Asker): Promise<Answer<K>>;
  /**
   * Lets nobody in, lets what runs end with its best within `graceMs`, and resolves when all is on disk. What waits stays in the store
   * for the next start; who waits for it is let go.
   */
  close(graceMs: number): Promise<void>;
  /** Ends all threads. To be called once nothing is to be read or drawn any more. */
  end(): Promise<void>;
}
