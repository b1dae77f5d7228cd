// The command's only clock.

/** Milliseconds since the process started. */
export function nowMs(): number {
  return performance.now();
}
