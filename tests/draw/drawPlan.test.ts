// Tests of src/draw/drawPlan.ts without a browser: goldens, sameness, names, and that nothing of the plan is missing.
import { describe, expect, test } from 'vitest';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { whatToDo } from '../../src/draw/whatToDo.ts';
import { planSchema } from '../../src/model/plan.ts';
import { PLANS } from './fixtures/plans.ts';
import { compareGolden } from './goldenText.ts';
import { smallPlan } from './smallPlan.ts';

function attributeValues(svg: string, name: string): readonly string[] {
  return [...svg.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, value]) => value ?? '');
}

function pagesOf(name: string): readonly string[] {
  const plan = PLANS[name];
  if (plan === undefined) throw new Error(`no plan ${name}`);
  return drawPlan(plan);
}

function textsOf(svg: string): string {
  return [...svg.matchAll(/<text[^>]*>(.*?)<\/text>/gs)].map(([, inside]) => (inside ?? '').replace(/<[^>]*>/g, '')).join('\n');
}

describe('goldens', () => {
  for (const name of ['morning', 'nothing', 'spring-night', 'rack']) {
    test.each(pagesOf(name).map((svg, index) => [`${name}-${index + 1}.svg`, svg] as const))('%s', (file, svg) => {
      expect(compareGolden(file, svg)).toEqual({ same: true });
    });
  }

  test('the list of the morning', () => {
    const plan = PLANS.morning;
    if (plan === undefined) throw new Error('no morning');
    const lines = whatToDo(plan).map(({ clock, who, what }) => `${clock} ${who?.name ?? ''}: ${what}`);
    expect(compareGolden('morning-list.txt', `${lines.join('\n')}\n`)).toEqual({ same: true });
  });
});

describe.each(Object.entries(PLANS))('%s', (name, plan) => {
  const pages = drawPlan(plan);

  test('the fixture is a plan', () => {
    expect(planSchema.safeParse(plan).error).toBeUndefined();
  });

  test('is drawn the same twice', () => {
    expect(drawPlan(structuredClone(plan))).toEqual(pages);
  });

  test('every task is in a bar or in the list', () => {
    const drawn = new Set(pages.flatMap((svg) => attributeValues(svg, 'data-tasks')).flatMap((ids) => ids.split(' ')));
    const listed = new Set(whatToDo(plan).flatMap(({ taskIds }) => taskIds));
    expect(plan.tasks.filter(({ id }) => !drawn.has(id) && !listed.has(id)).map(({ id }) => id)).toEqual([]);
    const placed = plan.tasks.filter(({ step }) => step !== 'cool');
    expect(placed.filter(({ id }) => !drawn.has(id)).map(({ id }) => id)).toEqual([]);
  });

  test('what shows together has hatches of its own', () => {
    for (const svg of pages) {
      const hatches = [...svg.matchAll(/id="hatch-(\d+)-/g)].map(([, hatch]) => hatch);
      expect(new Set(hatches).size).toBe(hatches.length);
    }
  });

  test('every page says what it is', () => {
    pages.forEach((svg, index) => {
      expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" viewBox="0 0 297 210"/);
      expect(svg).toMatch(/role="img" aria-label="[^"]+"/);
      expect(svg).toMatch(/<title>[^<]+<\/title>\n<desc>[^<]+<\/desc>/);
      expect(textsOf(svg)).toContain(`page ${index + 1} of ${pages.length}`);
      expect(textsOf(svg)).toContain('This plan is advice.');
    });
  });

  test('no script and no reference leaves the page', () => {
    for (const svg of pages) {
      expect(svg).not.toMatch(/<script/i);
      expect(svg.replace('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(/https?:/);
    }
  });

  test('orders, and on the first page what was left out, are said in words', () => {
    const all = pages.map(textsOf).join('\n');
    const late = plan.orders.filter(({ lateMinutes }) => (lateMinutes ?? 0) > 0);
    if (name !== 'hostile') for (const { lateMinutes } of late) expect(all).toContain(`late ${lateMinutes} min`);
    if (plan.leftOut.length > 0) expect(textsOf(pages[0] ?? '')).toContain('Left out: ');
    expect(textsOf(pages[0] ?? '')).toMatch(/Proved best|At most [\d.]+\u00a0% from the best possible/);
  });
});

test('many left-out products are told on the first page, and all of them further on', () => {
  const leftOut = Array.from({ length: 40 }, (_, k) => ({
    product: k % 2 === 0 ? 'tin' : 'roll',
    trays: k + 1,
    reasons: [{ rule: 'X', says: `reason ${k}` }],
  }));
  const pages = drawPlan(smallPlan([], { leftOut }));
  expect(textsOf(pages[0] ?? '')).toContain('Left out: 1 tray of Seeded tin. Reason 0.');
  expect(textsOf(pages[0] ?? '')).toContain('More is late or left out: see the list pages.');
  const rest = pages.map(textsOf).join(' ').replaceAll('\n', ' ');
  for (let k = 0; k < 40; k += 1) expect(rest).toContain(`Reason ${k}.`);
});

test('two decks of the same name are told apart', () => {
  const plan = smallPlan([
    { step: 'bake', product: 'tin', tray: 'tin-1', start: 60, end: 90, place: { kind: 'deck', id: 'a/deck', position: 1 } },
  ]);
  const deck = { name: 'Chamber', trays: 2, startsAtC: 200, loading: 'any-time' as const };
  const decks = [
    { ...deck, id: 'a/deck' },
    { ...deck, id: 'b/deck' },
  ];
  const told = whatToDo({ ...plan, bakehouse: { ...plan.bakehouse, decks } }).map(({ what }) => what);
  expect(told).toContain('1 tray of Seeded tin into Chamber (a deck), 200\u00a0°C, out at 04:30');
});

test('a hundred and twenty products still make pages with a chart', () => {
  const products = Array.from({ length: 120 }, (_, k) => ({
    id: `p${k}`,
    name: `Bread number ${k} of the long list`,
    dough: 'wheat',
    piecesPerTray: 10,
    pieceG: 100,
  }));
  const shelf = (k: number) => ({ kind: 'shelf' as const, id: 'proofer', position: (k % 8) + 1 });
  const tasks = products.map((product, k) => ({
    step: 'proof' as const,
    product: product.id,
    tray: `${product.id}-1`,
    start: 10 + Math.floor(k / 8) * 20,
    end: 25 + Math.floor(k / 8) * 20,
    place: shelf(k),
  }));
  const plan = smallPlan(tasks);
  const pages = drawPlan({ ...plan, bakehouse: { ...plan.bakehouse, products } });
  const all = pages.map(textsOf).join('\n');
  for (const product of products) expect(all).toContain(product.name);
});
