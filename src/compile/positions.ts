// Gives each use of a place a position of its own: in the order of their starts, the lowest one free.
// A place with room for n never needs more than n (intervals coloured greedily by start).

export type Hold = {
  readonly key: string;
  readonly start: number;
  readonly end: number;
  /** Of holds with the same times the lower rank takes the lower position. */
  readonly rank: number;
};

/** Position of each hold, from 1, none held twice at once. */
export function positionsOf(holds: readonly Hold[]): ReadonlyMap<string, number> {
  const position = new Map<string, number>();
  const busyUntil: number[] = [];
  const inOrder = [...holds].sort((a, b) => a.start - b.start || a.end - b.end || a.rank - b.rank || (a.key < b.key ? -1 : 1));
  for (const hold of inOrder) {
    let at = busyUntil.findIndex((until) => until <= hold.start);
    if (at < 0) at = busyUntil.length;
    busyUntil[at] = hold.end;
    position.set(hold.key, at + 1);
  }
  return position;
}
