// Rows of the list pages: what to do when, day heads, orders, and plain paragraphs.
import type { Doing } from './doing.ts';
import { FLOW_WIDTH, type Row } from './flow.ts';
import { hatchId } from './hatch.ts';
import type { Kind } from './kinds.ts';
import { placeLabel } from './label.ts';
import { placeLines, wordsOf, wrapWords } from './richText.ts';
import type { Book } from './sentences.ts';
import { el, type SvgNode } from './svg.ts';
import { textWidth } from './textWidth.ts';
import { INK, LINE, PAPER, TYPE } from './typeSize.ts';

const BOX = 3.4;
const CLOCK_X = BOX + 1.4;
const BELOW = 1.3;
const PARAGRAPH_SIZE = 3.3;

function kindsOfDoing(doing: Doing, book: Book): readonly Kind[] {
  return doing.handles.flatMap(({ id, sort }) => book.kinds.all.filter((kind) => kind.id === id && kind.sort === sort));
}

function swatch(kind: Kind | undefined, x: number, y: number): readonly SvgNode[] {
  if (kind === undefined) return [];
  const fill = `url(#${hatchId(kind.hatch, kind.colour)})`;
  return [el('rect', { x, y, width: 5, height: 3.6, fill, stroke: INK, 'stroke-width': 0.25 })];
}

function rule(x: number, y: number): SvgNode {
  return el('line', { x1: x, y1: y, x2: x + FLOW_WIDTH, y2: y, stroke: INK, 'stroke-width': 0.1 });
}

/** What is over on a day planned anew is pale. */
function quiet(isPast: boolean, nodes: readonly SvgNode[]): readonly SvgNode[] {
  return isPast ? [el('g', { opacity: 0.45 }, nodes)] : nodes;
}

/** A box to tick, the clock, a patch of the hatch, who, and what. */
export function doingRow(doing: Doing, isNamed: boolean, book: Book): Row {
  const clock = book.clock.says(doing.minute);
  const clockWidth = Math.max(textWidth('00:00', TYPE.far, true), textWidth(clock, TYPE.far, true));
  const [kind] = kindsOfDoing(doing, book);
  const textX = CLOCK_X + clockWidth + 1.6 + 6.4;
  const name = isNamed && doing.who !== null ? [{ text: `${doing.who.name}:`, size: TYPE.far, bold: true }] : [];
  const was = doing.was === undefined ? [] : splitWords({ text: `(was ${doing.was})`, size: TYPE.list, bold: true });
  const isPast = book.since !== undefined && doing.minute < book.since.now;
  const edge = doing.was === undefined ? 0.3 : 0.9;
  // The first line is as high as the clock beside it, so that both stand on one line.
  const [first, ...others] = wrapWords([...name.flatMap(splitWords), ...wordsOf(doing.what), ...was], FLOW_WIDTH - textX);
  const lines = first === undefined ? [] : [{ ...first, height: TYPE.far * LINE }, ...others];
  const height = lines.reduce((sum, line) => sum + line.height, 0);
  return {
    height: height + BELOW,
    kinds: kind === undefined ? [] : [kind],
    draw: (x, y) =>
      quiet(isPast, [
        el('rect', { x: x + 0.2, y: y + 0.9, width: BOX, height: BOX, fill: PAPER, stroke: INK, 'stroke-width': edge }),
        ...placeLabel([{ text: clock, size: TYPE.far, bold: true }], x + CLOCK_X, y),
        ...swatch(kind, x + CLOCK_X + clockWidth + 1.4, y + 0.9),
        ...placeLines(lines, x + textX, y),
        rule(x, y + height + BELOW / 2),
      ]),
  };
}

/** The date between two days, or a clock change, across the column. */
export function dayRow(words: string): Row {
  const lines = wrapWords([{ text: words, size: TYPE.list, bold: true }].flatMap(splitWords), FLOW_WIDTH - 2);
  const height = lines.reduce((sum, line) => sum + line.height, 0);
  return {
    height: height + 2.4,
    kinds: [],
    draw: (x, y) => [
      ...placeLines(lines, x + 1, y + 0.8),
      el('line', { x1: x, y1: y + height + 1.2, x2: x + FLOW_WIDTH, y2: y + height + 1.2, stroke: INK, 'stroke-width': 0.6 }),
    ],
  };
}

function splitWords({ text, size, bold }: { text: string; size: number; bold: boolean }) {
  return text.split(' ').map((word) => ({ text: word, size, bold }));
}

/** A sentence of its own, perhaps after a patch of a product's hatch; broken into rows a page can always hold. */
export function paragraphRows(sentence: string, kind: Kind | undefined, isBold: boolean): readonly Row[] {
  const indent = kind === undefined ? 0 : 6.4;
  const words = wordsOf(sentence, PARAGRAPH_SIZE).map((word) => ({ ...word, bold: word.bold || isBold }));
  const lines = wrapWords(words, FLOW_WIDTH - indent - 0.5);
  return lines.map((line, index) => ({
    height: line.height + (index === lines.length - 1 ? 1.4 : 0),
    kinds: kind === undefined ? [] : [kind],
    draw: (x, y) => [...(index === 0 ? swatch(kind, x + 0.2, y + 0.6) : []), ...placeLines([line], x + indent, y)],
  }));
}
