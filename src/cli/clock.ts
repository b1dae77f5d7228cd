// The command's only clock.

/** Milliseconds since the process started. */
export function nowMs(): number {
  return performance.now();
}

/** The moment by the machine's clock, as RFC 3339 in UTC: 2026-05-16T04:03:00.000Z. */
export function instantNow(): string {
  return new Date().toISOString();
}
