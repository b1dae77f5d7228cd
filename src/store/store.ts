// What the service keeps: scenarios, plans, posted days and what has happened, each with its history. The embedded store is openStore.ts;
// a networked database could keep the same promises.

/** Instants are RFC 3339 in UTC, to the millisecond: "2026-05-16T04:03:00.000Z". Dates are days of the bakery: "2026-05-16". */
export type ScenarioRecord = {
  readonly name: string;
  /** 1 for the first text under this name, then one more each time. */
  readonly revision: number;
  readonly savedAt: string;
  readonly mediaType: 'application/json' | 'application/yaml';
  /** As it was sent. */
  readonly text: string;
};

export type ScenarioEntry = Omit<ScenarioRecord, 'text'>;

/** Where a piece of work stands. `done`: by itself; `stopped`: somebody asked it to stop, or the service did, and its best was kept. */
export const WORK_STATES = ['waiting', 'running', 'done', 'stopped', 'failed'] as const;
export type WorkState = (typeof WORK_STATES)[number];

export const WORK_KINDS = ['plan', 'fit', 'comparison', 'replan'] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

export type WorkRecord = {
  /** Cannot be guessed; letters, digits, - and _. */
  readonly id: string;
  readonly kind: WorkKind;
  readonly state: WorkState;
  readonly askedAt: string;
  readonly endedAt: string | null;
  /** What was asked, as JSON. */
  readonly asked: string;
  /** The answer as JSON; null while there is none. Of a plan that is being made: its best so far, where one was kept. */
  readonly answer: string | null;
};

export type PostedRecord = {
  readonly date: string;
  /** 1 for the first plan posted for the day, then one more each time. */
  readonly revision: number;
  readonly postedAt: string;
  /** Of the scenario: which day is today is asked there. */
  readonly timeZone: string;
  /** The scenario the plan is of, as JSON: what happens on the day is read against both. */
  readonly scenario: string;
  /** The plan as JSON, and its pages as SVG, drawn when it was posted. */
  readonly plan: string;
  readonly pages: readonly string[];
};

export type PostedEntry = Pick<PostedRecord, 'date' | 'revision' | 'postedAt' | 'timeZone'>;

/** Something told of a day while it ran. */
export type HappenedRecord = {
  readonly date: string;
  /** In the order told, from 1. */
  readonly number: number;
  readonly toldAt: string;
  /** One event of `happened`, as JSON. */
  readonly event: string;
};

/** The answer once given to a request with this Idempotency-Key, and a fingerprint of that request. */
export type KeyRecord = {
  readonly key: string;
  readonly fingerprint: string;
  readonly savedAt: string;
  /** Where the work asked for is to be found. */
  readonly location: string;
};

/** Every promise resolves once what it says is on disk, and rejects with nothing changed. */
export interface Store {
  /**
   * `isRevision`: the revision the text is to replace (0: none yet); absent: whichever there is. Null when another stands there. The same
   * text again under the same name, of the same media type, is no new revision.
   */
  saveScenario(scenario: Omit<ScenarioRecord, 'revision'>, isRevision?: number): Promise<ScenarioRecord | null>;
  /** The last revision, or the one named; null when there is none. */
  scenario(name: string, revision?: number): Promise<ScenarioRecord | null>;
  /** The last revision of each, by name. */
  scenarios(): Promise<readonly ScenarioEntry[]>;
  /** All revisions of one, the newest first; empty when there is none. */
  scenarioHistory(name: string): Promise<readonly ScenarioEntry[]>;

  /** A piece of work that was accepted, with the key of its request where it had one; false when that key was taken meanwhile. */
  addWork(work: WorkRecord, key?: Omit<KeyRecord, 'location'> & { readonly location: string }): Promise<boolean>;
  changeWork(id: string, changes: Partial<Pick<WorkRecord, 'state' | 'endedAt' | 'answer'>>): Promise<void>;
  work(id: string): Promise<WorkRecord | null>;
  /** Work accepted and not ended, oldest first: what a service that was killed has to take up again. */
  openWork(): Promise<readonly WorkRecord[]>;
  key(key: string): Promise<KeyRecord | null>;

  /** `isRevision` as for scenarios; null when another stands there. */
  post(posted: Omit<PostedRecord, 'revision'>, isRevision?: number): Promise<PostedRecord | null>;
  posted(date: string, revision?: number): Promise<PostedRecord | null>;
  /** The newest first. */
  postedHistory(date: string): Promise<readonly PostedEntry[]>;
  /** What was posted last, for whichever day; null when nothing was. */
  lastPosted(): Promise<PostedEntry | null>;

  tell(date: string, toldAt: string, events: readonly string[]): Promise<readonly HappenedRecord[]>;
  happened(date: string): Promise<readonly HappenedRecord[]>;

  /** Removes ended work asked before this instant that is not posted, and keys saved before it. Returns how many. */
  forget(before: string): Promise<number>;
  /** Reads a row, so that a store that is gone is noticed. */
  isReady(): Promise<boolean>;
  /** Faults the database finds in itself; empty when it is sound. */
  faults(): Promise<readonly string[]>;
  /** Writes a consistent copy, beside and renamed, while others read and write. */
  backup(file: string): Promise<void>;
  close(): Promise<void>;
}
