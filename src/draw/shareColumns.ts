// Deals columns to pages and gives each its width.
import type { Column } from './column.ts';

/** Room between two columns, in mm. */
export const COLUMN_GAP = 1.6;

/** How much wider than the page the least widths may be before another page is begun. */
const SQUEEZE = 1.07;

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

/** Cuts a family that is too wide for one page into pieces of as many columns each as can be. */
function pieces(family: readonly Column[], width: number): readonly (readonly Column[])[] {
  for (let count = 1; count < family.length; count += 1) {
    const each = Math.ceil(family.length / count);
    const cut = Array.from({ length: Math.ceil(family.length / each) }, (_, k) => family.slice(k * each, (k + 1) * each));
    if (cut.every((piece) => minimum(piece) <= width)) return cut;
  }
  return family.map((column) => [column]);
}

function dealt(columns: readonly Column[], width: number): readonly (readonly Column[])[] {
  const pages: Column[][] = [];
  for (const piece of families(columns).flatMap((family) => pieces(family, width))) {
    const page = pages.at(-1);
    if (page !== undefined && minimum([...page, ...piece]) <= width) page.push(...piece);
    else pages.push([...piece]);
  }
  return pages;
}

/**
 * Columns of each page, in order. A family stays together where it can; a little squeezing is better than another page.
 * Columns that may be left away get no page of their own.
 */
export function pagesOfColumns(columns: readonly Column[], width: number): readonly (readonly Column[])[] {
  const easy = dealt(columns, width);
  const squeezed = dealt(columns, width * SQUEEZE);
  const pages = squeezed.length < easy.length ? squeezed : easy;
  const needed = pages.filter((page) => page.some(({ mayBeLeftAway }) => !mayBeLeftAway));
  if (needed.length > 0) return needed;
  return pages.length === 0 ? [[]] : pages;
}

/** Widths of the columns of a page: the least each needs, and of the rest a share by what it would like. */
export function widthsOf(columns: readonly Column[], width: number): readonly number[] {
  const gaps = columns.length * COLUMN_GAP;
  const squeeze = Math.min(1, (width - gaps) / (minimum(columns) - gaps));
  const spare = Math.max(0, width - minimum(columns));
  const wishes = columns.map(({ minWidth, wishWidth }) => Math.max(0.5, wishWidth - minWidth));
  const wished = wishes.reduce((sum, wish) => sum + wish, 0);
  // A lonely column does not become a barn: half as much again as it would like is enough.
  return columns.map(({ minWidth, wishWidth }, index) =>
    Math.min(Math.max(minWidth, wishWidth) * 1.5, minWidth * squeeze + (spare * (wishes[index] ?? 0)) / wished),
  );
}
