// What the command sees of the world around it: streams, clock, stop signals. Made by processSurroundings.ts, or by a test.

export type Stream = {
  readonly write: (text: string) => void;
  /** Resolves when everything written has left; false when some of it could not be written. */
  readonly settled: () => Promise<boolean>;
  readonly isTerminal: boolean;
  readonly hasColours: boolean;
};

export type Surroundings = {
  readonly out: Stream;
  readonly err: Stream;
  /** All of standard input, as bytes. */
  readonly readStdin: () => Promise<Uint8Array>;
  /** Milliseconds, on the clock of `startedAtMs`. */
  readonly now: () => number;
  /** The moment as RFC 3339 in UTC, to the millisecond. */
  readonly instant: () => string;
  /** When the time limit began to run. */
  readonly startedAtMs: number;
  /** Runs the work while a first stop signal only sets `isAsked` instead of ending the process. */
  readonly stoppable: <T>(work: (isAsked: () => boolean) => Promise<T>) => Promise<T>;
  /** Lets signals and output be handled between two rounds of work. */
  readonly pause: () => Promise<void>;
  /** Processors this process may use at once. */
  readonly processors: number;
  readonly isDebugging: boolean;
  /** Variables of the environment. */
  readonly env: Readonly<Record<string, string | undefined>>;
};
