// A fault of ours: the program did what it must never do, and says so instead of handing out a wrong result.

export class OwnFault extends Error {
  /** What was found, one sentence each. */
  readonly details: readonly string[];

  constructor(message: string, details: readonly string[] = []) {
    super(details.length === 0 ? message : `${message}: ${details[0]}`);
    this.name = 'OwnFault';
    this.details = details;
  }
}
