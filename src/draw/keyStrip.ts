// The key at the foot of a chart page: hatch, tag and name of everything on the page, and names too long for a head.
import { hatchId } from './hatch.ts';
import type { Kind } from './kinds.ts';
import { labelSize, placeLabel } from './label.ts';
import { tint } from './palette.ts';
import { el, type SvgNode } from './svg.ts';
import { textWidth } from './textWidth.ts';
import { INK } from './typeSize.ts';
import { wrapText } from './wrapText.ts';

const SIZE = 2.9;
const ROW = 4.6;
const SWATCH = 6;
const GAP = 4;

export type KeyEntry = { readonly kind?: Kind; readonly tag: string; readonly name: string };

type Placed = { readonly entry: KeyEntry; readonly x: number; readonly row: number; readonly lines: readonly string[] };

export type Key = { readonly height: number; readonly draw: (x: number, y: number) => readonly SvgNode[] };

function headWidth(entry: KeyEntry): number {
  const swatch = entry.kind === undefined ? 0 : SWATCH + 0.8;
  return swatch + textWidth(entry.tag, SIZE, true) + 1.2;
}

function place(entries: readonly KeyEntry[], width: number): { readonly placed: readonly Placed[]; readonly rows: number } {
  const placed: Placed[] = [];
  let [x, row, rowsUsed] = [0, 0, 1];
  for (const entry of entries) {
    const lines = wrapText(entry.name, width - headWidth(entry), SIZE);
    const wide = headWidth(entry) + Math.max(...lines.map((line) => textWidth(line, SIZE)));
    if (x > 0 && x + wide > width) [x, row, rowsUsed] = [0, row + rowsUsed, 1];
    placed.push({ entry, x, row, lines });
    rowsUsed = Math.max(rowsUsed, lines.length);
    x += wide + GAP;
  }
  return { placed, rows: entries.length === 0 ? 0 : row + rowsUsed };
}

function drawEntry({ entry, lines }: Placed, x: number, y: number): SvgNode {
  const { kind, tag } = entry;
  const swatch =
    kind === undefined
      ? []
      : [
          { fill: tint(kind.colour) },
          { fill: `url(#${hatchId(kind.hatch, kind.colour)})`, stroke: INK, 'stroke-width': 0.25 },
        ].map((paint) => el('rect', { x, y: y + 0.4, width: SWATCH, height: ROW - 1, ...paint }));
  const tagX = x + (kind === undefined ? 0 : SWATCH + 0.8);
  const tagLabel = [{ text: tag, size: SIZE, bold: true }];
  const nameX = tagX + labelSize(tagLabel).width + 1.2;
  return el('g', { role: 'group', 'aria-label': `${tag}: ${entry.name}` }, [
    ...swatch,
    ...placeLabel(tagLabel, tagX, y + 0.4),
    ...lines.flatMap((text, index) => placeLabel([{ text, size: SIZE }], nameX, y + 0.4 + index * ROW)),
  ]);
}

/** Cuts a long key into keys of at most a height. */
export function keyStrips(entries: readonly KeyEntry[], width: number, height: number): readonly Key[] {
  const strips: KeyEntry[][] = [];
  for (const entry of entries) {
    const last = strips.at(-1);
    if (last !== undefined && keyStrip([...last, entry], width).height <= height) last.push(entry);
    else strips.push([entry]);
  }
  return strips.map((strip) => keyStrip(strip, width));
}

/** Lays the key out in rows of a width. */
export function keyStrip(entries: readonly KeyEntry[], width: number): Key {
  const { placed, rows } = place(entries, width);
  return {
    height: rows * ROW,
    draw: (x, y) => placed.map((one) => drawEntry(one, x + one.x, y + one.row * ROW)),
  };
}
