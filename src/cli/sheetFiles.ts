// Which files the pages of a sheet go to, and writing them. Used by `plan`, `draw` and `post`.
import { readdir, readFile, rm } from 'node:fs/promises';
import { join, parse } from 'node:path';
import { errorCode } from './errorCode.ts';
import { prepareToWrite, writeWhole } from './writeWhole.ts';

/** How a page begins, up to its size: nobody's other picture is taken for one. */
const PAGE_START = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ';

/** Where a person wants the sheet: a folder, a file, both or neither. */
export type SheetPlace = { readonly out?: string; readonly svg?: string };

/** The first page keeps the name it was given; the others are numbered from 2: sheet.svg, sheet-2.svg. */
export function pageFile(first: string, page: number): string {
  if (page === 1) return first;
  const { dir, name, ext } = parse(first);
  return join(dir, `${name}-${page}${ext}`);
}

/** First pages of every place the sheet goes to. */
export function firstPages(place: SheetPlace): readonly string[] {
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

/** Whether a file is there and is a page we drew. */
async function isPage(file: string): Promise<boolean> {
  try {
    return (await readFile(file, 'utf8')).startsWith(PAGE_START);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Removes the pages that follow on from the last one: those of an earlier, longer sheet under the same name. */
export async function removeFurtherPages(first: string, pages: number): Promise<void> {
  for (let page = pages + 1; await isPage(pageFile(first, page)); page++) await rm(pageFile(first, page));
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
