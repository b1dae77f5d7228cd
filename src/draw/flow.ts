// Flows rows of blocks through two columns a page, page after page; a block that goes on gets its heading again.

import type { Kind } from './kinds.ts';
import { placeLabel } from './label.ts';
import { BODY } from './pageFrame.ts';
import { el, group, type SvgNode } from './svg.ts';
import { textWidth } from './textWidth.ts';
import { INK, LINE, PAPER, TYPE } from './typeSize.ts';
import { wrapText } from './wrapText.ts';

export type Row = {
  readonly height: number;
  readonly draw: (x: number, y: number) => readonly SvgNode[];
  /** Hatches it shows. */
  readonly kinds: readonly Kind[];
};

export type Block = { readonly heading: string; readonly rows: readonly Row[] };

export type FlowPage = {
  readonly nodes: readonly SvgNode[];
  readonly headings: readonly string[];
  readonly kinds: readonly Kind[];
};

const COLUMN_GAP = 7;
export const FLOW_WIDTH = (BODY.width - COLUMN_GAP) / 2;
const ABOVE_HEADING = 3;
const BELOW_HEADING = 1.4;
/** A heading at the foot of a column must have so much room for rows below it. */
const KEEP = 14;

function headingRow(heading: string): Row {
  const size = textWidth(heading, TYPE.far, true) <= FLOW_WIDTH - 2 ? TYPE.far : 3;
  const lines = wrapText(heading, FLOW_WIDTH - 2, size, true);
  const height = lines.length * size * LINE + 1;
  return {
    height: height + BELOW_HEADING,
    kinds: [],
    draw: (x, y) => [
      el('rect', { x, y, width: FLOW_WIDTH, height, fill: INK }),
      ...placeLabel(
        lines.map((text) => ({ text, size, bold: true })),
        x + 1,
        y + 0.5,
        'start',
        PAPER,
      ),
    ],
  };
}

type Cursor = { column: number; y: number; pages: { nodes: SvgNode[]; headings: Set<string>; kinds: Set<Kind> }[] };

function nextColumn(at: Cursor): void {
  if (at.column === 1) at.pages.push({ nodes: [], headings: new Set(), kinds: new Set() });
  at.column = 1 - at.column;
  at.y = 0;
}

function put(at: Cursor, row: Row, into: SvgNode[]): void {
  const x = BODY.x + at.column * (FLOW_WIDTH + COLUMN_GAP);
  into.push(...row.draw(x, BODY.y + at.y));
  at.y += row.height;
  const page = at.pages.at(-1);
  for (const kind of row.kinds) page?.kinds.add(kind);
}

function flowBlock(at: Cursor, block: Block): void {
  const heading = headingRow(block.heading);
  if (at.y > 0) at.y += ABOVE_HEADING;
  if (at.y + heading.height + Math.max(KEEP, block.rows[0]?.height ?? 0) > BODY.height) nextColumn(at);
  let nodes: SvgNode[] = [];
  const close = () => {
    const page = at.pages.at(-1);
    page?.nodes.push(group(block.heading, nodes));
    page?.headings.add(block.heading);
    nodes = [];
  };
  put(at, heading, nodes);
  for (const row of block.rows) {
    if (at.y + row.height > BODY.height) {
      close();
      nextColumn(at);
      put(at, headingRow(`${block.heading}, continued`), nodes);
    }
    put(at, row, nodes);
  }
  close();
}

/** Pages of the blocks. No row is higher than a page; that is the caller's care. */
export function flow(blocks: readonly Block[]): readonly FlowPage[] {
  const at: Cursor = { column: 0, y: 0, pages: [{ nodes: [], headings: new Set(), kinds: new Set() }] };
  for (const block of blocks.filter(({ rows }) => rows.length > 0)) flowBlock(at, block);
  return at.pages
    .filter(({ nodes }) => nodes.length > 0)
    .map(({ nodes, headings, kinds }) => ({ nodes, headings: [...headings], kinds: [...kinds] }));
}
