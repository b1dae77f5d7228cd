// Which files the pages of a sheet go to, and writing them. Used by `plan` and `draw`.
import { readdir, rm } from 'node:fs/promises';
import { join, parse } from 'node:path';
import { prepareToWrite, writeWhole } from './writeWhole.ts';

/** Where a person wants the sheet: a folder, a file, both or neither. */
export type SheetPlace = { readonly out?: string; readonly svg?: string };

/** The first page keeps the name it was given; the others are numbered from 2: sheet.svg, sheet-2.svg. */
export function pageFile(first: string, page: number): string {
  if (page === 1) return first;
  const { dir, name, ext } = parse(first);
  return join(dir, `${name}-${page}${ext}`);
}

function firstPages(place: SheetPlace): readonly string[] {
  const inFolder = place.out === undefined ? [] : [join(place.out, 'sheet.svg')];
  return place.svg === undefined ? inFolder : [...inFolder, place.svg];
}

export async function prepareSheet(place: SheetPlace, inputs: readonly string[]): Promise<void> {
  for (const file of firstPages(place)) await prepareToWrite(file, inputs);
}

/** An earlier, longer sheet in the folder leaves pages that nobody may post beside the new ones. */
async function removeOldPages(folder: string, pages: number): Promise<void> {
  for (const file of await readdir(folder)) {
    const page = /^sheet-(\d+)\.svg$/.exec(file)?.[1];
    if (page !== undefined && Number(page) > pages) await rm(join(folder, file));
  }
}

/** Writes every page and returns the files written. */
export async function writeSheet(place: SheetPlace, pages: readonly string[]): Promise<readonly string[]> {
  const written: string[] = [];
  for (const first of firstPages(place)) {
    for (const [index, text] of pages.entries()) {
      const file = pageFile(first, index + 1);
      await writeWhole(file, text);
      written.push(file);
    }
  }
  if (place.out !== undefined) await removeOldPages(place.out, pages.length);
  return written;
}
