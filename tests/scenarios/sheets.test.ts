// The sheets of the bakeries' real plans in a real browser, in two typefaces: nothing overlaps, nothing is cut or too small.
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { whatToDo } from '../../src/draw/whatToDo.ts';
import { CHROMIUM_FLAGS, chromiumPath } from '../draw/chromium.ts';
import { type PageFacts, readPage } from '../draw/readPage.ts';
import { planned } from '../laws/planned.ts';
import { scenarioNamed, scenarioNames } from './allScenarios.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await chromium.launch({ executablePath: chromiumPath(), args: [...CHROMIUM_FLAGS] });
  page = await browser.newPage({ viewport: { width: 1188, height: 840 } });
});

afterAll(async () => {
  await browser.close();
});

const CASES = scenarioNames.flatMap((name) => ['sans-serif', 'DejaVu Sans'].map((family) => [name, family] as const));

describe.each(CASES)('%s in %s', (name, family) => {
  it('reads well on every page', { timeout: 60_000 }, async () => {
    const plan = await planned(scenarioNamed(name), 10);
    const pages = drawPlan(plan);
    const shown = new Set(
      pages.flatMap((svg) => [...svg.matchAll(/data-tasks="([^"]*)"/g)].flatMap(([, ids]) => (ids ?? '').split(' '))),
    );
    const listed = new Set(whatToDo(plan).flatMap(({ taskIds }) => taskIds));
    expect(plan.tasks.filter(({ id }) => !shown.has(id) && !listed.has(id))).toEqual([]);
    const facts: PageFacts[] = [];
    for (const svg of pages) facts.push(await readPage(page, svg.replace('font-family="sans-serif"', `font-family="${family}"`)));
    const all = (pick: (one: PageFacts) => readonly string[]): readonly string[] => facts.flatMap(pick);
    expect(all(({ parserError }) => (parserError === '' ? [] : [parserError]))).toEqual([]);
    expect(all(({ overlaps }) => overlaps)).toEqual([]);
    expect(all(({ outside }) => outside)).toEqual([]);
    expect(all(({ outsideBar }) => outsideBar)).toEqual([]);
    expect(all(({ missing }) => missing)).toEqual([]);
    expect(all(({ active }) => active)).toEqual([]);
    expect(Math.min(...facts.map(({ smallest }) => smallest))).toBeGreaterThanOrEqual(2.2);
    expect(Math.min(...facts.filter(({ isList }) => isList).map(({ smallest }) => smallest))).toBeGreaterThanOrEqual(2.6);
  });
});
