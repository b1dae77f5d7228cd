// How a value of an input is quoted back in a sentence: short, on one line, without control characters.

const MAX_SHOWN = 40;

function shortened(text: string): string {
  return text.length <= MAX_SHOWN ? text : `${text.slice(0, MAX_SHOWN - 3)}...`;
}

function visible(text: string): string {
  return text.replaceAll(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, '?');
}

/** A value as it is named in a sentence. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return `"${visible(shortened(value))}"`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) {
    const flat = value.every((item) => typeof item === 'number' || typeof item === 'string');
    return flat && value.length <= 4 ? `[${value.map(shown).join(', ')}]` : `a list of ${value.length}`;
  }
  return 'keys with values';
}

/** A count with its word: "1 minute", "12 minutes". */
export function amount(count: number, word: string): string {
  return count === 1 ? `1 ${word}` : `${count} ${word}s`;
}

/** Words joined for a sentence: "a", "a or b", "a, b or c". */
export function choiceOf(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}
