// Deals columns to pages and gives each its width.
import type { Column } from './column.ts';

/** Room between two columns, in mm. */
export const COLUMN_GAP = 1.6;

function minimum(columns: readonly Column[]): number {
  return columns.reduce((sum, { minWidth }) => sum + minWidth + COLUMN_GAP, 0);
}

function families(columns: readonly Column[]): readonly (readonly Column[])[] {
  const groups: Column[][] = [];
  for (const column of columns) {
    const last = groups.at(-1);
    if (last?.[0]?.family === column.family) last.push(column);
    else groups.push([column]);
  }
  return groups;
}

/** Columns of each page, in order. A family goes to the next page whole unless a page alone is too small for it. */
export function pagesOfColumns(columns: readonly Column[], width: number): readonly (readonly Column[])[] {
  const pages: Column[][] = [[]];
  const add = (column: Column) => {
    const page = pages.at(-1) ?? [];
    if (page.length > 0 && minimum([...page, column]) > width) pages.push([column]);
    else page.push(column);
  };
  for (const family of families(columns)) {
    const page = pages.at(-1) ?? [];
    const startsPage = page.length > 0 && minimum([...page, ...family]) > width && minimum(family) <= width;
    if (startsPage) pages.push([]);
    for (const column of family) add(column);
  }
  return pages;
}

/** Widths of the columns of a page: the least each needs, and of the rest a share by what it would like. */
export function widthsOf(columns: readonly Column[], width: number): readonly number[] {
  const spare = Math.max(0, width - minimum(columns));
  const wishes = columns.map(({ minWidth, wishWidth }) => Math.max(0.5, wishWidth - minWidth));
  const wished = wishes.reduce((sum, wish) => sum + wish, 0);
  // A lonely column does not become a barn: half as much again as it would like is enough.
  return columns.map(({ minWidth, wishWidth }, index) =>
    Math.min(Math.max(minWidth, wishWidth) * 1.5, minWidth + (spare * (wishes[index] ?? 0)) / wished),
  );
}
