// Labels: a few lines of type, measured before they are placed, so that a text is written whole or not at all.
import { el, type SvgNode } from './svg.ts';
import { textWidth } from './textWidth.ts';
import { BASELINE, INK, LINE, PAPER } from './typeSize.ts';

export type Line = { readonly text: string; readonly size: number; readonly bold?: boolean };
export type Label = readonly Line[];

/** Width of the widest line and height of all lines, in mm. */
export function labelSize(label: Label): { readonly width: number; readonly height: number } {
  return {
    width: Math.max(0, ...label.map(({ text, size, bold }) => textWidth(text, size, bold === true))),
    height: label.reduce((sum, { size }) => sum + size * LINE, 0),
  };
}

/** The first of several labels, best first, that fits the room. */
export function firstThatFits(labels: readonly Label[], width: number, height: number): Label | undefined {
  return labels.find((label) => {
    const size = labelSize(label);
    return size.width <= width && size.height <= height;
  });
}

export type Anchor = 'start' | 'middle' | 'end';

/** Text nodes of a label whose top is at y; x is its start, middle or end. */
export function placeLabel(label: Label, x: number, y: number, anchor: Anchor = 'start', ink: string = INK): readonly SvgNode[] {
  let top = y;
  return label.map(({ text, size, bold }) => {
    const node = el(
      'text',
      {
        x,
        y: top + size * BASELINE,
        'font-size': size,
        'font-weight': bold === true ? 700 : undefined,
        'text-anchor': anchor === 'start' ? undefined : anchor,
        fill: ink,
      },
      [text],
    );
    top += size * LINE;
    return node;
  });
}

/** The same line in several sizes, largest first. */
export function inSizes(text: string, sizes: readonly number[], bold = false): readonly Label[] {
  return sizes.map((size) => [{ text, size, bold }]);
}

/** As placeLabel, for text that stands on the page itself: white ground keeps the lines of the clock off it. */
export function placeOnPage(label: Label, x: number, y: number): readonly SvgNode[] {
  let top = y;
  return label.flatMap((line) => {
    const { width, height } = labelSize([line]);
    const ground = el('rect', { x: x - 0.3, y: top, width: width + 0.6, height, fill: PAPER });
    const text = placeLabel([line], x, top);
    top += height;
    return [ground, ...text];
  });
}
