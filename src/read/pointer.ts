// JSON Pointers (RFC 6901): the `path` of an input error, made from and taken apart into its segments.

export type Segment = string | number;

/** The pointer of a list of keys and indexes; '' for the whole. */
export function pointerOf(segments: readonly PropertyKey[]): string {
  return segments.map((segment) => `/${String(segment).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** The keys and indexes of a pointer, indexes as text. */
export function segmentsOf(pointer: string): readonly string[] {
  if (pointer === '') return [];
  return pointer
    .slice(1)
    .split('/')
    .map((segment) => segment.replaceAll('~1', '/').replaceAll('~0', '~'));
}
