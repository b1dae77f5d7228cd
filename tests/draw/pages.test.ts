// Every page of every fixture in a real browser: well-formed, nothing cut, nothing overlapping, nothing too small to read.
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { textWidth } from '../../src/draw/textWidth.ts';
import { CHROMIUM_FLAGS, chromiumPath } from './chromium.ts';
import { PLANS } from './fixtures/plans.ts';
import { type PageFacts, readPage } from './readPage.ts';

type Printed = { readonly text: string; readonly isBold: boolean; readonly width: number };

const SMALLEST_MM = 2.2;
const SMALLEST_IN_LISTS_MM = 2.6;

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await chromium.launch({ executablePath: chromiumPath(), args: [...CHROMIUM_FLAGS] });
  page = await browser.newPage({ viewport: { width: 1188, height: 840 } });
});

afterAll(async () => {
  await browser.close();
});

/** Families to set the sheet in: what this machine calls sans-serif, and the widest of the common ones. */
const FAMILIES = ['sans-serif', 'DejaVu Sans'];
const CASES = Object.keys(PLANS).flatMap((name) => FAMILIES.map((family) => [name, family] as const));

describe.each(CASES)('%s in %s', (name, family) => {
  let facts: readonly PageFacts[] = [];

  beforeAll(async () => {
    const plan = PLANS[name];
    if (plan === undefined) throw new Error(`no plan ${name}`);
    const read: PageFacts[] = [];
    for (const svg of drawPlan(plan)) {
      expect(svg).toContain('font-family="sans-serif"');
      read.push(await readPage(page, svg.replace('font-family="sans-serif"', `font-family="${family}"`)));
    }
    facts = read;
  }, 60_000);

  test('is well-formed XML', () => {
    expect(facts.length).toBeGreaterThan(0);
    expect(facts.map(({ parserError }) => parserError)).toEqual(facts.map(() => ''));
  });

  test('is read with at least some text on every page', () => {
    expect(Math.min(...facts.map(({ texts }) => texts))).toBeGreaterThan(5);
  });

  test('no two texts overlap', () => {
    expect(facts.flatMap(({ overlaps }) => overlaps)).toEqual([]);
  });

  test('no text leaves the page', () => {
    expect(facts.flatMap(({ outside }) => outside)).toEqual([]);
  });

  test('no text leaves its bar', () => {
    expect(facts.flatMap(({ outsideBar }) => outsideBar)).toEqual([]);
  });

  test('no type is too small', () => {
    expect(Math.min(...facts.map(({ smallest }) => smallest))).toBeGreaterThanOrEqual(SMALLEST_MM);
    const lists = facts.filter(({ isList }) => isList);
    expect(lists.length).toBeGreaterThan(0);
    expect(Math.min(...lists.map(({ smallest }) => smallest))).toBeGreaterThanOrEqual(SMALLEST_IN_LISTS_MM);
  });

  test('every hatch that is used is there', () => {
    expect(facts.flatMap(({ missing }) => missing)).toEqual([]);
  });

  test('nothing runs and nothing is fetched', () => {
    expect(facts.flatMap(({ active }) => active)).toEqual([]);
  });
});

test('the width table never says less than a browser prints', async () => {
  const samples = [
    'Seeded tin 230\u00a0°C, out at 06:09',
    'WAVE Millimetre fjord',
    'ÀÉÎõü ßøæ',
    '0123456789:,.;()',
    '"quotes" & <marks>',
    'Žluťoučký kůň',
    'Хлеб',
    'Ψωμί',
  ];
  const fonts = ['sans-serif', 'DejaVu Sans', 'Liberation Sans'];
  const printed: Printed[] = [];
  for (const text of samples) {
    for (const family of fonts) {
      for (const isBold of [false, true]) {
        const font = `${isBold ? 'bold ' : ''}100px "${family}"`;
        const width = await page.evaluate(
          `(() => { const c = document.createElement('canvas').getContext('2d'); c.font = ${JSON.stringify(font)};
            return c.measureText(${JSON.stringify(text)}).width; })()`,
        );
        printed.push({ text, isBold, width: z.number().parse(width) });
      }
    }
  }
  const tooWide = printed.filter(({ text, isBold, width }) => width > textWidth(text, 100, isBold));
  expect(printed).toHaveLength(samples.length * fonts.length * 2);
  expect(tooWide).toEqual([]);
});

describe('the inspection itself finds', () => {
  const inspect = (inside: string) =>
    readPage(page, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 297 210">${inside}</svg>`);
  const text = (x: number, y: number, words: string) => `<text x="${x}" y="${y}" font-size="4">${words}</text>`;

  test('texts that overlap', async () => {
    expect((await inspect(text(20, 20, 'one') + text(22, 21, 'two'))).overlaps).toEqual(['one / two']);
    expect((await inspect(text(20, 20, 'one') + text(20, 26, 'two'))).overlaps).toEqual([]);
  });

  test('texts that leave the page or their bar', async () => {
    expect((await inspect(text(295, 20, 'gone'))).outside).toEqual(['gone']);
    const bar = `<g data-bar="x"><rect x="10" y="10" width="20" height="8" fill="#fff"/>`;
    expect((await inspect(`${bar}${text(12, 15, 'in')}</g>`)).outsideBar).toEqual([]);
    expect((await inspect(`${bar}${text(26, 15, 'too long')}</g>`)).outsideBar).toEqual(['too long']);
  });

  test('broken XML, missing hatches, scripts and references', async () => {
    expect((await inspect('<g>')).parserError).not.toBe('');
    expect((await inspect('<rect fill="url(#none)"/>')).missing).toEqual(['none']);
    expect((await inspect('<script>1</script><rect onclick="1"/><image href="http://x"/>')).active).toHaveLength(4);
  });
});
