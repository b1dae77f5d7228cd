// Finds the word somebody probably meant. Used for keys, ids, words of a choice, steps and time zones.
import { distance } from 'fastest-levenshtein';

const MAX_WORD_LENGTH = 64;

/** How many letters may be wrong: none in one, one in up to four, then a third of them, never more than four. */
function mayDiffer(word: string): number {
  if (word.length < 2) return 0;
  return Math.min(4, Math.max(1, Math.floor(word.length / 3)));
}

function plainForm(word: string): string {
  return word.toLowerCase().replaceAll(/[\s_-]/g, '');
}

function closeness(word: string, candidate: string): number {
  const [wanted, offered] = [plainForm(word), plainForm(candidate)];
  if (wanted === offered) return 0;
  const isStart = wanted.length >= 4 && offered.length >= 4 && (offered.startsWith(wanted) || wanted.startsWith(offered));
  return isStart ? 1 : distance(wanted, offered);
}

/** The candidate closest to the word, or undefined when none is close. Ties go to the first. */
export function didYouMean(word: string, candidates: readonly string[]): string | undefined {
  if (word.length > MAX_WORD_LENGTH) return undefined;
  let best: string | undefined;
  let least = mayDiffer(word) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) > least + 12) continue;
    const far = closeness(word, candidate);
    if (far < least) [best, least] = [candidate, far];
  }
  return best;
}
