// Whether JSON text names a key twice in one object, of which JSON.parse keeps the last without a word. Used by readScenario.ts.

/** A string, and the colon that makes it a key (RFC 8259, sections 4 and 7). */
const STRING = /"(?:[^"\\]|\\.)*"(\s*:)?/g;

function keysOf(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  const below = Object.values(value).reduce<number>((sum, each) => sum + keysOf(each), 0);
  return Array.isArray(value) ? below : below + Object.keys(value).length;
}

/** @param value - what JSON.parse made of the text, nested no deeper than a scenario. */
export function repeatsKeys(text: string, value: unknown): boolean {
  let written = 0;
  for (const [, colon] of text.matchAll(STRING)) if (colon !== undefined) written++;
  return written !== keysOf(value);
}
