// What a person asked for on the command line, parsed and checked. Made by commandLine.ts, done by run.ts.

/** How long to search, and how. */
type Searching = {
  /** Seconds from the start of the process to the last written byte, above 0. */
  readonly seconds?: number;
  /** Rounds of search, 1 or more: of the plan, or of each plan and question that the answer takes. */
  readonly effort?: number;
  readonly seed?: number;
  /** Threads that search, 1 or 2. */
  readonly workers?: number;
};

/** Where a sheet or a picture goes. */
type SheetFiles = {
  /** A folder. */
  readonly out?: string;
  /** The file of its first page. */
  readonly svg?: string;
};

export type PlanRequest = SheetFiles &
  Searching & {
    readonly do: 'plan';
    readonly file: string;
    readonly json: boolean;
    /** File of a plan to start from. */
    readonly from?: string;
    /** Plan with the minutes of a slow morning. */
    readonly careful?: true;
    /** Tell how sure the plan is. */
    readonly howSure?: true;
  };

export type ReplanRequest = SheetFiles &
  Searching & {
    readonly do: 'replan';
    readonly file: string;
    readonly plan: string;
    /** Clock text of the scenario's day. */
    readonly now: string;
    /** File of what has happened. */
    readonly happened?: string;
    readonly json: boolean;
  };

export type CheckRequest = { readonly do: 'check'; readonly file: string; readonly plan: string; readonly json: boolean };

export type DrawRequest = SheetFiles & { readonly do: 'draw'; readonly plan: string };

export type CompareRequest = SheetFiles &
  Searching & {
    readonly do: 'compare';
    readonly file: string;
    /** File of changes; either this or a sweep. */
    readonly changes?: string;
    /** One number of the scenario by its JSON Pointer, and whole values from, to, both included, by steps. */
    readonly sweep?: { readonly pointer: string; readonly from: number; readonly to: number; readonly step: number };
    /** Id of the product whose trays are added. */
    readonly moreOf?: string;
    readonly json: boolean;
  };

export type WhyRequest = Omit<Searching, 'workers'> & {
  readonly do: 'why';
  readonly file: string;
  readonly plan: string;
  readonly json: boolean;
};

export type FitRequest = Searching & {
  readonly do: 'fit';
  readonly file: string;
  /** Orders to add, of products of the scenario or of `product`. */
  readonly add: readonly { readonly product: string; readonly pieces: number; readonly readyBy: string }[];
  /** File of doughs, products and orders to add. */
  readonly product?: string;
  /** File of the plan to add to. */
  readonly from?: string;
  readonly json: boolean;
};

export type ServeRequest = {
  readonly do: 'serve';
  /** Texts of the flags given, by the variable of the same setting; read together with the environment. */
  readonly flags: Readonly<Record<string, string>>;
  readonly openToAnyone: boolean;
};

export type PostRequest = SheetFiles &
  Searching & {
    readonly do: 'post';
    readonly file: string;
    /** File of the store to post into; the usual one when neither this nor `url` is given. */
    readonly store?: string;
    /** Where a service answers that is to post it. */
    readonly url?: string;
    /** File of the token that service wants. */
    readonly tokenFile?: string;
  };

export type BackupRequest = { readonly do: 'backup'; readonly file: string; readonly store?: string };

export type Request =
  | PlanRequest
  | ReplanRequest
  | CheckRequest
  | DrawRequest
  | CompareRequest
  | WhyRequest
  | FitRequest
  | ServeRequest
  | PostRequest
  | BackupRequest;
