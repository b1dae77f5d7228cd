// Gives each use of a place a position of its own: in the order of their starts, the lowest one free.
// A place with room for n never needs more than n (intervals coloured greedily by start).

export type Hold = {
  readonly key: string;
  readonly start: number;
  readonly end: number;
  /** Of holds with the same times the lower rank takes the lower position. */
  readonly rank: number;
  /** The position it has already; then it starts no later than any without one. */
  readonly position?: number;
};

/** Position of each hold, from 1, none held twice at once. */
export function positionsOf(holds: readonly Hold[]): ReadonlyMap<string, number> {
  const position = new Map<string, number>();
  const busyUntil: number[] = [];
  const inOrder = [...holds].sort(
    (a, b) =>
      a.start - b.start ||
      Number(b.position !== undefined) - Number(a.position !== undefined) ||
      a.end - b.end ||
      a.rank - b.rank ||
      (a.key < b.key ? -1 : 1),
  );
  for (const hold of inOrder) {
    let at = hold.position === undefined ? busyUntil.findIndex((until) => until <= hold.start) : hold.position - 1;
    if (at < 0) at = busyUntil.length;
    while (busyUntil.length < at) busyUntil.push(Number.NEGATIVE_INFINITY);
    busyUntil[at] = Math.max(hold.end, busyUntil[at] ?? hold.end);
    position.set(hold.key, at + 1);
  }
  return position;
}
