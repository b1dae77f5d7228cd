// Changes side by side: a row for each day with its verdict and a bar for each figure; a line runs down where the day as it is stands.
// Used by drawComparison.
import type { Comparison, DayFigures } from '../../model/comparison.ts';
import { type Label, labelSize, placeLabel, placeOnPage } from '../label.ts';
import { el, group, type SvgNode } from '../svg.ts';
import { textWidth } from '../textWidth.ts';
import { GREY_INK, INK, TYPE } from '../typeSize.ts';
import { wrapText } from '../wrapText.ts';
import { ROOM } from './comparisonFrame.ts';
import { AS_IS, BEYOND, FOUND, fillOf, UNDECIDED } from './marks.ts';
import { type Measure, measuresOf } from './measures.ts';

const TITLE_WIDTH = 90;
const GAP = 4;
const HEAD = 11.5;
const BAR = 4.2;
const ABOVE = 1.6;

type Row = { readonly title: string; readonly says: string; readonly figures: DayFigures; readonly isBase: boolean };
type Scaled = Measure & { readonly x: number; readonly width: number; readonly most: number; readonly base: number };

function rowsOf({ base, days }: Comparison): readonly Row[] {
  const own = base.capacity?.says ?? '';
  return [
    { title: 'The day as it is', says: own, figures: base, isBase: true },
    ...days.map(({ title, figures, difference }) => ({
      title,
      says: difference.says.startsWith(`${title}: `) ? difference.says.slice(title.length + 2) : difference.says,
      figures,
      isBase: false,
    })),
  ];
}

function wordsOf(row: Row): Label {
  const width = TITLE_WIDTH - 4;
  const size = wrapText(row.title, width, TYPE.far, true).length === 1 ? TYPE.far : 3.4;
  const says = `${row.says.slice(0, 1).toUpperCase()}${row.says.slice(1)}`;
  return [
    ...wrapText(row.title, width, size, true).map((text) => ({ text, size, bold: true })),
    ...wrapText(says, width, TYPE.note).map((text) => ({ text, size: TYPE.note })),
  ];
}

/** The text under a bar, in as many lines as it needs. */
function figureLabel(text: string, width: number): Label {
  const size = textWidth(text, TYPE.list, true) <= width ? TYPE.list : TYPE.note;
  return wrapText(text, width, size, true).map((line) => ({ text: line, size, bold: true }));
}

function heightOf(row: Row, measures: readonly Scaled[]): number {
  const labels = measures.map(({ figureOf, width }) => labelSize(figureLabel(figureOf(row.figures).text, width)).height);
  return Math.max(labelSize(wordsOf(row)).height, BAR + 0.4 + Math.max(...labels)) + 2 * ABOVE;
}

function scaled(comparison: Comparison, rows: readonly Row[]): readonly Scaled[] {
  const measures = measuresOf(comparison);
  const width = (ROOM.width - TITLE_WIDTH - GAP * measures.length) / measures.length;
  return measures.map((measure, index) => ({
    ...measure,
    x: ROOM.x + TITLE_WIDTH + GAP + index * (width + GAP),
    width,
    most: Math.max(1, ...rows.map(({ figures }) => measure.figureOf(figures).beyond)),
    base: measure.figureOf(comparison.base).value,
  }));
}

function heads(measures: readonly Scaled[]): readonly SvgNode[] {
  const largest =
    [3.6, 3.4, 3.2, 2.9].find((size) => measures.every(({ title, width }) => textWidth(title, size, true) <= width)) ?? 2.6;
  return measures.flatMap(({ title, note, x, width }) =>
    placeLabel(
      [{ text: title, size: largest, bold: true }, ...wrapText(note, width, 2.5).map((text) => ({ text, size: 2.5 }))],
      x,
      ROOM.y,
    ),
  );
}

function bar(measure: Scaled, row: Row, y: number): SvgNode {
  const { value, beyond, text } = measure.figureOf(row.figures);
  const per = measure.width / measure.most;
  const rect = (from: number, to: number, fill: string): readonly SvgNode[] =>
    to <= from
      ? []
      : [
          el('rect', {
            x: measure.x + from * per,
            y,
            width: (to - from) * per,
            height: BAR,
            fill,
            stroke: INK,
            'stroke-width': 0.25,
          }),
        ];
  return el('g', { role: 'group', 'aria-label': `${measure.title}: ${text}` }, [
    ...rect(0, value, fillOf(row.isBase ? AS_IS : FOUND)),
    ...rect(value, beyond, fillOf(measure.title === 'Trays on time' ? UNDECIDED : BEYOND)),
    ...placeOnPage(figureLabel(text, measure.width), measure.x, y + BAR + 0.4),
  ]);
}

function drawRow(row: Row, measures: readonly Scaled[], y: number): SvgNode {
  const height = heightOf(row, measures);
  return group(`${row.title}. ${row.says}`, [
    ...placeLabel(wordsOf(row), ROOM.x, y + ABOVE),
    ...measures.map((measure) => bar(measure, row, y + ABOVE)),
    el('line', { x1: ROOM.x, y1: y + height, x2: ROOM.x + ROOM.width, y2: y + height, stroke: GREY_INK, 'stroke-width': 0.15 }),
  ]);
}

/** Down the rows at the length of the day as it is, so that more and less are seen at once. */
function plumbLines(measures: readonly Scaled[], from: number, until: number): readonly SvgNode[] {
  return measures.flatMap(({ x, width, most, base }) => {
    if (base === 0) return [];
    const at = x + (base / most) * width;
    return [el('line', { x1: at, y1: from, x2: at, y2: until, stroke: INK, 'stroke-width': 0.3, 'stroke-dasharray': '1.2 0.9' })];
  });
}

/** Rows dealt to pages. */
function pagesOf(rows: readonly Row[], measures: readonly Scaled[]): readonly (readonly Row[])[] {
  const pages: Row[][] = [[]];
  let used = HEAD;
  for (const row of rows) {
    if (used + heightOf(row, measures) > ROOM.height && (pages.at(-1)?.length ?? 0) > 0) {
      pages.push([]);
      used = HEAD;
    }
    pages.at(-1)?.push(row);
    used += heightOf(row, measures);
  }
  return pages;
}

/** The bodies of the pages. */
export function changePages(comparison: Comparison): readonly (readonly SvgNode[])[] {
  const rows = rowsOf(comparison);
  const measures = scaled(comparison, rows);
  return pagesOf(rows, measures).map((page) => {
    let y = ROOM.y + HEAD;
    const drawn = page.map((row) => {
      const node = drawRow(row, measures, y);
      y += heightOf(row, measures);
      return node;
    });
    return [...heads(measures), ...plumbLines(measures, ROOM.y + HEAD, y), ...drawn];
  });
}
