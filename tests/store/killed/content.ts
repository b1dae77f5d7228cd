// Texts of many lengths, each told by its number alone: what was cut or mixed up is seen. Used by the writer and by those who look after it.

/** Between 20 and 60,000 characters: one page of the file, or many. */
export function contentOf(number: number): string {
  const mixed = Math.imul(number + 1, 2_654_435_761) >>> 0;
  return `${number}:${`${number} flour `.repeat(mixed % (mixed % 4 === 0 ? 5000 : 100))}:${number}`;
}

/** The number of a whole text; null when it is none. */
export function numberOf(text: string): number | null {
  const number = Number.parseInt(text, 10);
  return contentOf(number) === text ? number : null;
}

export function pagesOf(number: number): readonly string[] {
  return Array.from({ length: 1 + (number % 4) }, (_, page) => `${page}/${contentOf(number)}`);
}

/** An instant that grows with the number. */
export function instantOf(number: number): string {
  return new Date(Date.UTC(2026, 0, 1) + number).toISOString();
}
