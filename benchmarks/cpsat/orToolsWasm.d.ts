// What we use of or-tools-wasm 0.9.1, so that types are checked without installing it.
declare module 'or-tools-wasm/cp-sat' {
  /** A 64-bit whole number, in whichever form the decoder chose. */
  type Whole = number | bigint | { toString(): string };
  export type Response = {
    readonly status?: string | number;
    readonly solution?: readonly Whole[];
    readonly objectiveValue?: number;
    readonly bestObjectiveBound?: number;
    readonly wallTime?: number;
    readonly solveLog?: string;
  };
  export type Parameters = {
    readonly maxTimeInSeconds: number;
    readonly numWorkers: number;
    readonly randomSeed: number;
    readonly logSearchProgress: boolean;
    readonly logToResponse: boolean;
    readonly logToStdout: boolean;
  };
  export const CpSat: {
    createModel(model: object): Promise<Uint8Array>;
    validate(model: Uint8Array): Promise<{ readonly ok: boolean; readonly message: string }>;
    solve(
      model: Uint8Array,
      parameters: Parameters,
      callbacks?: { readonly onSolution?: (response: Response) => void },
    ): Promise<{ readonly response: Response | null }>;
  };
}
