// Drawn and told comparisons against their goldens, and every page in a real browser: well-formed, nothing cut, nothing overlapping.
import { readFileSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inkFor } from '../../src/cli/ink.ts';
import { sayComparison } from '../../src/cli/sayComparison.ts';
import { drawComparison } from '../../src/draw/comparison/drawComparison.ts';
import { type Comparison, comparisonSchema } from '../../src/model/comparison.ts';
import { CHROMIUM_FLAGS, chromiumPath } from './chromium.ts';
import { compareGolden } from './goldenText.ts';
import { readPage } from './readPage.ts';

const SMALLEST_MM = 2.2;

function comparison(name: string): Comparison {
  return comparisonSchema.parse(JSON.parse(readFileSync(new URL(`fixtures/comparisons/${name}.json`, import.meta.url), 'utf8')));
}

const NAMES = ['changes', 'sweep'];

describe.each(NAMES)('%s', (name) => {
  test('is told as it was', () => {
    const text = sayComparison(comparison(name), ['comparison.svg'], inkFor(false));
    expect(compareGolden(`comparison-${name}.txt`, text)).toEqual({ same: true });
  });

  test('is drawn as it was', () => {
    const pages = drawComparison(comparison(name));
    expect(pages).toHaveLength(1);
    expect(pages.map((svg) => compareGolden(`comparison-${name}.svg`, svg))).toEqual([{ same: true }]);
  });
});

/** As many changes as a file may hold, so that pages go on. */
function manyChanges(): Comparison {
  const few = comparison('changes');
  const days = Array.from({ length: 50 }, (_, index) => few.days[index % few.days.length]).filter((day) => day !== undefined);
  return { ...few, days };
}

/** A sweep of which the first values were not looked at, and of so many values that not all can be written. */
function longSweep(): Comparison {
  const short = comparison('sweep');
  const days = Array.from({ length: 100 }, (_, index) => {
    const day = short.days[Math.min(index, short.days.length - 1)];
    return day === undefined
      ? []
      : [{ ...day, value: index, figures: index < 3 ? { ...day.figures, capacity: null } : day.figures }];
  }).flat();
  return { ...short, days };
}

describe('pages in a browser', () => {
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: chromiumPath(), args: [...CHROMIUM_FLAGS] });
    page = await browser.newPage({ viewport: { width: 1188, height: 840 } });
  }, 60_000);

  afterAll(async () => {
    await browser.close();
  });

  const CASES = [
    ['changes', () => comparison('changes')],
    ['fifty changes', manyChanges],
    ['sweep', () => comparison('sweep')],
    ['sweep of a hundred values', longSweep],
  ] as const;

  test.each(CASES.flatMap(([name, make]) => ['sans-serif', 'DejaVu Sans'].map((family) => [name, family, make] as const)))(
    '%s in %s',
    { timeout: 60_000 },
    async (_, family, make) => {
      for (const svg of drawComparison(make())) {
        const facts = await readPage(page, svg.replace('font-family="sans-serif"', `font-family="${family}"`));
        expect(facts.parserError).toBe('');
        expect(facts.texts).toBeGreaterThan(5);
        expect([facts.overlaps, facts.outside, facts.missing, facts.active]).toEqual([[], [], [], []]);
        expect(facts.smallest).toBeGreaterThanOrEqual(SMALLEST_MM);
      }
    },
  );
});
