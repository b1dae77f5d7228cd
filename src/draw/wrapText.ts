// Breaks text into lines that fit a width, between words where it can and inside a word only when the word is too long.
import { textWidth } from './textWidth.ts';

function pieces(word: string, width: number, sizeMm: number, isBold: boolean): readonly string[] {
  if (textWidth(word, sizeMm, isBold) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const character of word) {
    if (part !== '' && textWidth(part + character, sizeMm, isBold) > width) {
      parts.push(part);
      part = '';
    }
    part += character;
  }
  return [...parts, part];
}

/** Lines of at most `width` mm. An empty text is one empty line. */
export function wrapText(text: string, width: number, sizeMm: number, isBold = false): readonly string[] {
  const words = text.split(/ +/).flatMap((word) => pieces(word, width, sizeMm, isBold));
  const lines: string[] = [];
  let line = '';
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, sizeMm, isBold) > width) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  return [...lines, line];
}
