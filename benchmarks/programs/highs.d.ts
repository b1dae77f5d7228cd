// What we use of highs 1.15.3, so that types are checked without installing it.
declare module 'highs' {
  export type Highs = {
    /** Solves a model in CPLEX LP format. */
    solve(problem: string): { readonly Status: string; readonly ObjectiveValue: number };
  };
  export default function load(): Promise<Highs>;
}
