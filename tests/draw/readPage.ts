// Loads a page of the sheet in a browser and reports what a reader would trip over.
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { z } from 'zod';

const texts = z.array(z.string());

const pageFactsSchema = z.strictObject({
  /** What the XML parser says; empty when the page is well-formed. */
  parserError: z.string(),
  /** How many texts there are. */
  texts: z.int(),
  /** Pairs of texts that overlap. */
  overlaps: texts,
  /** Texts that leave the page. */
  outside: texts,
  /** Texts that leave their bar. */
  outsideBar: texts,
  /** Smallest type on the page, in mm; 99 when there is none. */
  smallest: z.number(),
  isList: z.boolean(),
  /** Patterns that are referred to but not defined. */
  missing: texts,
  /** Scripts, handlers, and references out of the page. */
  active: texts,
});

export type PageFacts = z.infer<typeof pageFactsSchema>;

// Kept as plain JavaScript: it lives in the browser's world, whose types the program does not have.
const INSPECT = readFileSync(new URL('inspectPage.browser.js', import.meta.url), 'utf8');

/** Facts of one page, parsed as XML, as a browser parses a file. */
export async function readPage(page: Page, svg: string): Promise<PageFacts> {
  await page.setContent('<body style="margin:0"></body>');
  return pageFactsSchema.parse(await page.evaluate(`(() => { ${INSPECT}\n return inspect(${JSON.stringify(svg)}); })()`));
}
