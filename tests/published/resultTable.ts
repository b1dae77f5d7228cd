// One row an instance: what was found, proved and published. As columns for a terminal, and as a table for a page.
import type { Folder } from './benchFolder.ts';
import type { PublishedCase } from './publishedCase.ts';
import type { Attempt } from './solveCase.ts';

export type Row = { readonly one: PublishedCase; readonly tried: Attempt; readonly seconds: number };

const short = (value: number): string => (Number.isInteger(value) ? String(value) : value.toFixed(4));
const orDash = (value: number | null): string => (value === null ? '-' : short(value));

function verdict({ one, tried }: Row): string {
  if (tried.faults.length > 0) return `WRONG: ${tried.faults.slice(0, 3).join('; ')}`;
  if (tried.found === 'none') return tried.isProved ? 'there is none: proved' : 'none found';
  const { best } = one.published;
  const isEqual = best !== null && Math.abs(tried.found.value - best) < 1e-9;
  // Where price and objective are two things, what is proved of the price says nothing of the objective.
  const isProved = tried.isProved && one.priceShift !== null;
  return [isEqual ? 'equal' : '', isProved ? 'proved' : ''].filter((word) => word !== '').join(', ');
}

function aboveOf({ one, tried }: Row): string {
  const { best } = one.published;
  return best === null || best === 0 || tried.found === 'none' ? '' : `${(100 * (tried.found.value / best - 1)).toFixed(1)} %`;
}

function detailsOf({ one, tried }: Row): readonly string[] {
  if (tried.found === 'none' || tried.found.details === undefined) return [];
  const printed = one.published.details ?? {};
  return Object.entries(tried.found.details).map(([name, value]) =>
    printed[name] === undefined ? short(value) : `${short(value)} (${short(printed[name])})`,
  );
}

const PLAIN_HEAD = ['instance', 'found', 'proved floor', 'published', 'above', 'seconds', ''];
const OVEN_HEAD = ['instance', 'use case 1', 'use case 2', 'use case 3', 'runtime', 'late jobs', 'setup costs', 'seconds', ''];

export function headOf(folder: Folder): readonly string[] {
  return folder === 'osp' ? OVEN_HEAD : PLAIN_HEAD;
}

export function cellsOf(row: Row): readonly string[] {
  const { one, tried } = row;
  const seconds = row.seconds.toFixed(1);
  if (one.folder === 'osp') return [one.name, ...detailsOf(row), seconds, verdict(row)];
  const found = tried.found === 'none' ? '-' : short(tried.found.value);
  return [one.name, found, orDash(tried.bound), orDash(one.published.best), aboveOf(row), seconds, verdict(row)];
}

export function terminalLine(cells: readonly string[]): string {
  return cells.map((cell, i) => (i === 0 ? cell.padEnd(36) : cell.padStart(i === cells.length - 1 ? 0 : 15))).join(' ');
}

export function pageTable(folder: Folder, rows: readonly Row[]): string {
  const head = headOf(folder);
  const lines = [head, head.map(() => '---'), ...rows.map(cellsOf)];
  return lines.map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}
