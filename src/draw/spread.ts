// Spreads labels down a strip so that none overlaps, each as near to its moment as it can be.

export type Wanted = { readonly ideal: number; readonly height: number };

/**
 * Tops of the labels, in their order, inside [top, bottom]; undefined for one that would stand further than `reach` mm
 * from its moment. Labels come sorted by `ideal`.
 */
export function spread(wanted: readonly Wanted[], top: number, bottom: number, reach: number): readonly (number | undefined)[] {
  const tops: (number | undefined)[] = [];
  let free = top;
  wanted.forEach(({ ideal, height }, index) => {
    const next = wanted[index + 1];
    const latest = Math.min(bottom - height, Math.max(top, ideal));
    // A label in a crowd starts a little early, so that the next one is not pushed away.
    const early = next === undefined ? 0 : Math.min(height / 2, Math.max(0, ideal + height - next.ideal));
    const place = Math.max(free, Math.min(latest, ideal - early));
    const isIn = place + height <= bottom + 1e-6 && Math.abs(place - ideal) <= reach;
    tops.push(isIn ? place : undefined);
    if (isIn) free = place + height;
  });
  return tops;
}

/** As spread, but keeps every label, moving earlier ones up when the strip's end is reached; null when they do not fit. */
export function spreadAll(wanted: readonly Wanted[], top: number, bottom: number): readonly number[] | null {
  const total = wanted.reduce((sum, { height }) => sum + height, 0);
  if (total > bottom - top) return null;
  const tops: number[] = [];
  let free = top;
  for (const { ideal, height } of wanted) {
    const place = Math.max(free, ideal);
    tops.push(place);
    free = place + height;
  }
  let limit = bottom;
  for (let index = wanted.length - 1; index >= 0; index -= 1) {
    const height = wanted[index]?.height ?? 0;
    const place = Math.min(tops[index] ?? top, limit - height);
    tops[index] = place;
    limit = place;
  }
  return tops;
}
