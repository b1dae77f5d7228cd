// How a benchmark ended, from the process that ran it: its exit code, and what to say of an end that was none. Used by start.mjs.

/** Of Node: a module that waits at its top level for what never comes (Node.js 20 documentation, Process, "Exit codes"; from memory). */
const UNSETTLED = 13;

/** @param {{ status: number | null, signal: string | null, error?: Error }} child as spawnSync gives it */
export function endOf({ status, signal, error }) {
  if (error !== undefined) return { code: 1, says: `the benchmark could not be started: ${error.message}` };
  if (signal !== null) return { code: 1, says: `the benchmark was ended by ${signal}; what is printed is not all` };
  if (status === UNSETTLED)
    return { code: UNSETTLED, says: 'the benchmark ended in its midst, waiting for what never came; what is printed is not all' };
  return { code: status ?? 1, says: null };
}
