// The head of a column: its title as large as it fits, smaller notes under it, and what the key must tell instead.
import type { Column } from './column.ts';
import type { KeyEntry } from './keyStrip.ts';
import { type Label, labelSize, placeLabel } from './label.ts';
import type { Box, TimeWindow } from './sheet.ts';
import { el, type SvgNode } from './svg.ts';
import { textWidth } from './textWidth.ts';
import { INK, TYPE } from './typeSize.ts';
import { wrapText } from './wrapText.ts';

export const COLUMN_HEAD_HEIGHT = 15.5;
const TITLE_HEIGHT = 9.2;
const NOTE = 2.5;
const MOST_NOTE_LINES = 2;

function hasBrokenWord(text: string, width: number, size: number): boolean {
  return text.split(' ').some((word) => textWidth(word, size, true) > width);
}

function titleIn(title: string, width: number): Label | undefined {
  for (const size of [TYPE.far, 3.8, 3.3, 2.8]) {
    if (hasBrokenWord(title, width, size)) continue;
    const label = wrapText(title, width, size, true).map((text) => ({ text, size, bold: true }));
    if (labelSize(label).height <= TITLE_HEIGHT) return label;
  }
  return undefined;
}

/** Whether the head has room for the title; otherwise the short title stands there and the key explains it. */
export function needsKey(column: Column, width: number): KeyEntry | undefined {
  if (titleIn(column.title, width - 1) !== undefined) return undefined;
  return { tag: column.shortTitle, name: column.title };
}

/** Notes one under the other, each in its fuller wording where that fits; a note without room is left away whole. */
function noteLines(column: Column, window: TimeWindow, width: number): readonly string[] {
  const lines: string[] = [];
  for (const { full, short } of column.notes(window)) {
    const own = [wrapText(full, width, NOTE), wrapText(short, width, NOTE)];
    const fits = own.find((wrapped) => lines.length + wrapped.length <= MOST_NOTE_LINES);
    lines.push(...(fits ?? []));
  }
  return lines;
}

/** Nodes of a head whose box ends where the chart begins. */
export function columnHead(column: Column, box: Box, window: TimeWindow): readonly SvgNode[] {
  const width = box.width - 1;
  const short: Label = [{ text: column.shortTitle, size: 2.8, bold: true }];
  const title = titleIn(column.title, width) ?? titleIn(column.shortTitle, width) ?? short;
  const notes: Label = noteLines(column, window, width).map((text) => ({ text, size: NOTE }));
  const bottom = box.y + box.height;
  const titleBottom = box.y + TITLE_HEIGHT;
  return [
    ...placeLabel(title, box.x + 0.5, titleBottom - labelSize(title).height),
    ...placeLabel(notes, box.x + 0.5, titleBottom),
    el('line', { x1: box.x, y1: bottom, x2: box.x + box.width, y2: bottom, stroke: INK, 'stroke-width': 0.5 }),
  ];
}
