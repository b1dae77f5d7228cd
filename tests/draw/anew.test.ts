// The sheet of a day planned anew: what is marked as changed and with what words, what is pale, the line at now; read in a browser.
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { whatToDo } from '../../src/draw/whatToDo.ts';
import type { Plan } from '../../src/model/plan.ts';
import { threeLoavesPlan } from '../questions/replan/threeLoaves.ts';
import { CHROMIUM_FLAGS, chromiumPath } from './chromium.ts';
import { ANEW } from './fixtures/anew.ts';
import { readPage } from './readPage.ts';

const by = (person: string, what: 'load' | 'unload' | 'shape') => ({ person, for: what });

/** The morning of three loaves planned anew at 04:00: one loaf loads later, one on another deck, one is taken out by another. */
const PLAN: Plan = {
  ...threeLoavesPlan,
  underway: {
    now: 60,
    moved: [
      {
        task: 'rye-1/bake',
        from: {
          start: 90,
          place: { kind: 'deck', id: 'oven/top', position: 1 },
          people: [by('ada', 'load'), by('ada', 'unload')],
        },
      },
      {
        task: 'rye-2/bake',
        from: {
          start: 102,
          place: { kind: 'deck', id: 'oven/low', position: 1 },
          people: [by('ben', 'load'), by('ben', 'unload')],
        },
      },
      {
        task: 'rye-3/bake',
        from: {
          start: 112,
          place: { kind: 'deck', id: 'oven/low', position: 1 },
          people: [by('ada', 'load'), by('ben', 'unload')],
        },
      },
    ],
    changes: [{ minute: 102, says: 'Rye 1: load at 04:42 instead of 04:30, Top deck.' }],
  },
};

const sheet = drawPlan(PLAN).join('\n');

/** The group of the bar that shows a task in a column whose sentence begins with a verb. */
function barOf(verb: string, task: string): string {
  const bars = [...sheet.matchAll(/<g role="group" aria-label="[^"]*" data-bar[\s\S]*?<\/g>/g)].map(([bar]) => bar);
  const found = bars.find((bar) => bar.includes(`aria-label="${verb} `) && bar.includes(` data-tasks="${task}"`));
  if (found === undefined) throw new Error(`no bar of ${task}`);
  return found;
}

describe('the chart', () => {
  test('a bake that moved has a bold edge, and its label says when it was to be out', () => {
    const bar = barOf('bake', 'rye-1/bake');
    expect(bar).toContain('aria-label="bake Rye, 1 tray, 04:42 to 05:12, was 05:00"');
    expect(bar).toMatch(/stroke-width="0\.9"/);
    expect(bar).toMatch(/>05:12<[\s\S]*>was<[\s\S]*>05:00</);
  });

  test('one that is elsewhere says where it was', () => {
    expect(barOf('bake', 'rye-2/bake')).toContain('was Low deck"');
  });

  test('what has not moved has a thin edge; what is over is pale, what goes on is not', () => {
    expect(barOf('proof', 'rye-3/proof')).not.toMatch(/stroke-width="0\.[4-9]/);
    expect(barOf('proof', 'rye-3/proof')).not.toContain('opacity="0.4"');
    expect(barOf('bench', 'rye-2/shape')).toContain('opacity="0.4"');
  });

  test('a line at now, with a flag, and a word on what the marks mean', () => {
    expect(sheet).toContain('aria-label="now"');
    expect(sheet).toMatch(/>now<\/text>\s*<text[^>]*>04:00<\/text>/);
    expect(sheet).toContain('Planned anew at 04:00: a bold edge is a change, with what it was; pale is over.');
  });

  test('what was over half an hour before now is not drawn', () => {
    const later = drawPlan({ ...PLAN, underway: { now: 90, moved: [], changes: [] } }).join('\n');
    expect(later).not.toContain('data-tasks="rye-dough-1/mix"');
    expect(drawPlan(threeLoavesPlan).join('\n')).toContain('data-tasks="rye-dough-1/mix"');
  });
});

describe('the list', () => {
  test('what to do says how it was: time, deck, person, each where it is otherwise', () => {
    const was = whatToDo(PLAN).flatMap((doing) => (doing.was === undefined ? [] : [`${doing.clock} ${doing.does} ${doing.was}`]));
    expect(was).toEqual(['04:40 load 04:28', '04:40 load Low deck', '05:22 unload Ben']);
    expect(whatToDo(threeLoavesPlan).every((doing) => doing.was === undefined)).toBe(true);
  });

  test('it begins with what has changed, and marks where now is', () => {
    expect(sheet).toContain('What has changed, as of 04:00');
    expect(sheet.replace(/<[^>]+>/g, '')).toContain('Rye 1: load at 04:42 instead of 04:30, Top deck.');
    expect(sheet.replace(/<[^>]+>/g, '')).toContain('Now 04:00: planned anew from here on');
  });
});

test('a day that is planned for the first time has none of the marks', () => {
  const first = drawPlan(threeLoavesPlan).join('\n');
  for (const mark of ['aria-label="now"', 'opacity="0.4', 'was ', 'anew']) expect(first).not.toContain(mark);
});

describe('in a browser', () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: chromiumPath(), args: [...CHROMIUM_FLAGS] });
    page = await browser.newPage({ viewport: { width: 1188, height: 840 } });
  });
  afterAll(async () => {
    await browser.close();
  });

  test.each(Object.keys(ANEW))(
    '%s: nothing overlaps, leaves its bar or the page, or is too small',
    { timeout: 60_000 },
    async (name) => {
      const plan = ANEW[name];
      if (plan === undefined) throw new Error(`no plan ${name}`);
      for (const svg of drawPlan(plan)) {
        const facts = await readPage(page, svg);
        expect(facts).toMatchObject({ parserError: '', overlaps: [], outside: [], outsideBar: [], missing: [], active: [] });
        expect(facts.smallest).toBeGreaterThanOrEqual(2.2);
      }
    },
  );
});
