// The chart pages: time runs down the page, the bread travels across it from bowl to shop.

import { changeInWords, clockGutter, GUTTER_WIDTH } from './clockGutter.ts';
import type { Column } from './column.ts';
import { COLUMN_HEAD_HEIGHT, columnHead, needsKey } from './columnHead.ts';
import { deckColumns } from './deckColumns.ts';
import type { Doing } from './doing.ts';
import { benchColumn, bowlColumns, bulkColumn } from './doughColumns.ts';
import { type Key, type KeyEntry, keyStrip, keyStrips } from './keyStrip.ts';
import type { Kind } from './kinds.ts';
import { nowLine } from './nowLine.ts';
import { ordersColumn } from './ordersColumn.ts';
import { BODY, type Page } from './pageFrame.ts';
import { peopleColumns } from './peopleColumns.ts';
import { rackColumn, roomColumns } from './roomColumns.ts';
import type { Book } from './sentences.ts';
import { COLUMN_GAP, pagesOfColumns, widthsOf } from './shareColumns.ts';
import { type Area, areaOf, type Box, type TimeWindow } from './sheet.ts';
import { group, type SvgNode } from './svg.ts';
import { timeWindows } from './timeWindows.ts';

const CHART_WIDTH = BODY.width - GUTTER_WIDTH;

/** The most of the page's height a key may take from the chart. */
const MOST_KEY_SHARE = 0.32;

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

type ChartKey = { readonly strip: Key; readonly pages: readonly Page[] };

/** The key under the chart; when it would take the chart's room it gets pages of its own. */
function chartKey(kinds: readonly Kind[], heads: readonly KeyEntry[], room: number, under: string): ChartKey {
  const entries = [...kinds.map((kind) => ({ kind, tag: kind.tag, name: kind.name })), ...heads];
  const strip = keyStrip(entries, BODY.width);
  if (strip.height <= room * MOST_KEY_SHARE) return { strip, pages: [] };
  const pages = keyStrips(entries, BODY.width, BODY.height).map((part) => ({
    subject: 'Key',
    under,
    describes: 'What the hatches and tags of the page before stand for.',
    kinds,
    body: [group('key', part.draw(BODY.x, BODY.y))],
  }));
  return { strip: keyStrip([{ tag: 'Key:', name: 'on the next page' }], BODY.width), pages };
}

/** The line at now on a day planned anew. */
function nowAcross(now: number | undefined, area: Area, left: number, right: number): readonly SvgNode[] {
  return now === undefined ? [] : [group('now', nowLine(now, area, left, right))];
}

type Notes = { readonly nodes: readonly SvgNode[]; readonly height: number };

function chartPage(columns: readonly Column[], window: TimeWindow, notes: Notes, book: Book): readonly Page[] {
  const laid = layOut(columns);
  const top = BODY.y + notes.height + COLUMN_HEAD_HEIGHT;
  const room = BODY.y + BODY.height - top - 2;
  const heads = laid.flatMap(({ column, width }): KeyEntry[] => {
    const entry = needsKey(column, width);
    return entry === undefined ? [] : [entry];
  });
  // Which kinds show does not depend on the height: a first drawing finds them, and so the room the key needs.
  const kinds = kindsShown(drawColumns(laid, { ...BODY, y: top, height: room }, window), book.kinds.all);
  const under = underTitle(book, window);
  const key = chartKey(kinds, heads, room, under);
  const chart = { ...BODY, y: top, height: room - key.strip.height };
  const end = laid.at(-1);
  const right = end === undefined ? BODY.x + BODY.width : end.x + end.width;
  const now = book.since?.now;
  const hours = `${book.clock.shows(window.from)} – ${book.clock.shows(window.until)}`;
  const page = {
    subject: hours,
    under,
    describes: `Time runs down the page from ${hours}. Columns: ${columns.map(({ title }) => title).join(', ')}.`,
    kinds,
    body: [
      ...notes.nodes,
      group('clock', clockGutter(book.clock, areaOf({ ...chart, width: GUTTER_WIDTH }, window), right, now)),
      ...nowAcross(now, areaOf(chart, window), BODY.x + GUTTER_WIDTH - 2, right),
      ...drawColumns(laid, chart, window),
      // Over the bars, under the words of the people's columns.
      ...nowAcross(now, areaOf(chart, window), laid.find(({ column }) => column.family !== 'people')?.x ?? right, right),
      group('key', key.strip.draw(BODY.x, chart.y + chart.height + 1.6)),
    ],
  };
  return [page, ...key.pages];
}

/** Chart pages of a plan; the notes stand at the top of the first. */
export function chartPages(book: Book, doings: readonly Doing[], notes: Notes): readonly Page[] {
  const columns = allColumns(book, doings);
  const pages = timeWindows(book.plan, book.clock).flatMap((window) =>
    pagesOfColumns(
      columns.filter((column) => column.isNeeded(window)),
      CHART_WIDTH,
    ).map((pageColumns) => ({ window, pageColumns })),
  );
  const nothing: Notes = { nodes: [], height: 0 };
  return pages.flatMap(({ window, pageColumns }, index) => chartPage(pageColumns, window, index === 0 ? notes : nothing, book));
}
