// The chart pages: time runs down the page, the bread travels across it from bowl to shop.

import { changeInWords, clockGutter, GUTTER_WIDTH } from './clockGutter.ts';
import type { Column } from './column.ts';
import { COLUMN_HEAD_HEIGHT, columnHead, needsKey } from './columnHead.ts';
import { deckColumns } from './deckColumns.ts';
import type { Doing } from './doing.ts';
import { benchColumn, bowlColumns, bulkColumn } from './doughColumns.ts';
import { type KeyEntry, keyStrip } from './keyStrip.ts';
import type { Kind } from './kinds.ts';
import { ordersColumn } from './ordersColumn.ts';
import { BODY, type Page } from './pageFrame.ts';
import { peopleColumns } from './peopleColumns.ts';
import { rackColumn, roomColumns } from './roomColumns.ts';
import type { Book } from './sentences.ts';
import { COLUMN_GAP, pagesOfColumns, widthsOf } from './shareColumns.ts';
import { areaOf, type Box, type TimeWindow } from './sheet.ts';
import { group, type SvgNode } from './svg.ts';
import { timeWindows } from './timeWindows.ts';

const CHART_WIDTH = BODY.width - GUTTER_WIDTH;

function allColumns(book: Book, doings: readonly Doing[]): readonly Column[] {
  return [
    ...peopleColumns(book, doings),
    ...bowlColumns(book),
    bulkColumn(book),
    benchColumn(book),
    ...roomColumns(book),
    ...deckColumns(book),
    rackColumn(book),
    ordersColumn(book),
  ];
}

/** Kinds whose bars show among nodes. */
function kindsShown(nodes: readonly SvgNode[], kinds: readonly Kind[]): readonly Kind[] {
  const keys = new Set<unknown>();
  const walk = (node: SvgNode | string): void => {
    if (typeof node === 'string') return;
    keys.add(node.attributes['data-bar']);
    node.children.forEach(walk);
  };
  nodes.forEach(walk);
  return kinds.filter((kind) => keys.has(kind.key));
}

type Laid = { readonly column: Column; readonly x: number; readonly width: number };

function layOut(columns: readonly Column[]): readonly Laid[] {
  let x = BODY.x + GUTTER_WIDTH;
  return columns.map((column, index) => {
    const width = widthsOf(columns, CHART_WIDTH)[index] ?? column.minWidth;
    const laid = { column, x: x + COLUMN_GAP, width };
    x += width + COLUMN_GAP;
    return laid;
  });
}

function drawColumns(laid: readonly Laid[], chart: Box, window: TimeWindow): readonly SvgNode[] {
  return laid.map(({ column, x, width }) => {
    const area = areaOf({ ...chart, x, width }, window);
    const head = { x, y: chart.y - COLUMN_HEAD_HEIGHT, width, height: COLUMN_HEAD_HEIGHT };
    return group(column.title, [...columnHead(column, head, window), ...column.draw(area)]);
  });
}

function underTitle(book: Book, window: TimeWindow): string {
  const first = book.clock.dateWords(window.from);
  const last = book.clock.dateWords(window.until - 1);
  const date = first === last ? first : `${first} to ${last}`;
  const changes = book.clock.changes
    .filter(({ minute }) => minute > window.from && minute < window.until)
    .map((change) => ` ${changeInWords(book.clock, change)}`);
  return `${date}, clock of ${book.plan.scenario.timeZone}.${changes.join('')}`;
}

function chartPage(
  columns: readonly Column[],
  window: TimeWindow,
  notes: readonly SvgNode[],
  notesHeight: number,
  book: Book,
): Page {
  const laid = layOut(columns);
  const top = BODY.y + notesHeight + COLUMN_HEAD_HEIGHT;
  const headKeys = laid.flatMap(({ column, width }): KeyEntry[] => {
    const entry = needsKey(column, width);
    return entry === undefined ? [] : [entry];
  });
  const keyOf = (kinds: readonly Kind[]) =>
    keyStrip([...kinds.map((kind) => ({ kind, tag: kind.tag, name: kind.name })), ...headKeys], BODY.width);
  // Which kinds show does not depend on the height: a first drawing finds them, and so the room the key needs.
  const roughly = drawColumns(laid, { ...BODY, y: top, height: 100 }, window);
  const kinds = kindsShown(roughly, book.kinds.all);
  const key = keyOf(kinds);
  const chart = { ...BODY, y: top, height: BODY.y + BODY.height - top - key.height - 2 };
  const area = areaOf({ ...chart, width: GUTTER_WIDTH }, window);
  const end = laid.at(-1);
  const right = end === undefined ? BODY.x + BODY.width : end.x + end.width;
  const names = columns.map(({ title }) => title).join(', ');
  const hours = `${book.clock.shows(window.from)} – ${book.clock.shows(window.until)}`;
  return {
    subject: hours,
    under: underTitle(book, window),
    describes: `Time runs down the page from ${hours}. Columns: ${names}.`,
    kinds,
    body: [
      ...notes,
      group('clock', clockGutter(book.clock, area, right)),
      ...drawColumns(laid, chart, window),
      group('key', key.draw(BODY.x, chart.y + chart.height + 1.6)),
    ],
  };
}

/** Chart pages of a plan; the notes stand at the top of the first. */
export function chartPages(
  book: Book,
  doings: readonly Doing[],
  notes: readonly SvgNode[],
  notesHeight: number,
): readonly Page[] {
  const columns = allColumns(book, doings);
  let isFirst = true;
  return timeWindows(book.plan, book.clock).flatMap((window) =>
    pagesOfColumns(
      columns.filter((column) => column.isNeeded(window)),
      CHART_WIDTH,
    ).map((pageColumns) => {
      const page = chartPage(pageColumns, window, isFirst ? notes : [], isFirst ? notesHeight : 0, book);
      isFirst = false;
      return page;
    }),
  );
}
