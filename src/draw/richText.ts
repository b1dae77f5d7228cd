// Lines of running text in which clock times and oven temperatures stand out. The list of what to do is set in it.
import { el, type SvgNode } from './svg.ts';
import { textWidth } from './textWidth.ts';
import { BASELINE, INK, LINE, TYPE } from './typeSize.ts';

export type Word = { readonly text: string; readonly size: number; readonly bold: boolean };
export type RichLine = { readonly words: readonly Word[]; readonly height: number };

const STANDS_OUT = /^(?:\d\d:\d\d|-?\d+(?:\.\d+)?\u00a0°C)/;

/** Words of a sentence, its times and temperatures large and bold. */
export function wordsOf(sentence: string, size: number = TYPE.list): readonly Word[] {
  return sentence
    .split(' ')
    .filter((text) => text !== '')
    .map((text) => (STANDS_OUT.test(text) ? { text, size: Math.max(size, 4), bold: true } : { text, size, bold: false }));
}

function widthOf(word: Word): number {
  return textWidth(word.text, word.size, word.bold);
}

/** A blank is set in the type of the word after it. */
function blankBefore(word: Word): number {
  return textWidth(' ', word.size, word.bold);
}

function broken(word: Word, width: number): readonly Word[] {
  if (widthOf(word) <= width) return [word];
  const parts: Word[] = [];
  let text = '';
  for (const character of word.text) {
    if (text !== '' && textWidth(text + character, word.size, word.bold) > width) {
      parts.push({ ...word, text });
      text = '';
    }
    text += character;
  }
  return [...parts, { ...word, text }];
}

function lineOf(words: readonly Word[]): RichLine {
  return { words, height: Math.max(TYPE.list, ...words.map(({ size }) => size)) * LINE };
}

/** Breaks words into lines of at most `width` mm. */
export function wrapWords(words: readonly Word[], width: number): readonly RichLine[] {
  const lines: RichLine[] = [];
  let line: Word[] = [];
  let used = 0;
  for (const word of words.flatMap((one) => broken(one, width))) {
    const longer = used + (line.length === 0 ? 0 : blankBefore(word)) + widthOf(word);
    if (line.length > 0 && longer > width) {
      lines.push(lineOf(line));
      line = [word];
      used = widthOf(word);
    } else {
      line.push(word);
      used = longer;
    }
  }
  return line.length === 0 ? lines : [...lines, lineOf(line)];
}

/** Text nodes of lines whose first top is at y. */
export function placeLines(lines: readonly RichLine[], x: number, y: number): readonly SvgNode[] {
  let top = y;
  return lines.map(({ words, height }) => {
    const baseline = top + (height / LINE) * BASELINE;
    top += height;
    const spans = words.map(({ text, size, bold }, index) =>
      el('tspan', { 'font-size': size, 'font-weight': bold ? 700 : undefined }, [index === 0 ? text : ` ${text}`]),
    );
    return el('text', { x, y: baseline, 'font-size': TYPE.list, fill: INK, 'xml:space': 'preserve' }, spans);
  });
}
