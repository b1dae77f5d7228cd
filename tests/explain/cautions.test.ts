import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_SAYS, sayNames } from '../../src/explain/cautions/longestSays.ts';
import { cautionsFor } from '../../src/explain/cautions.ts';
import type { Task } from '../../src/model/plan.ts';
import { ALLERGENS, type ScenarioInput } from '../../src/model/scenario.ts';
import { dayWith, dayWithProduct, trayTask, workOf } from './cautionDay.ts';

const codes = (tasks: readonly Task[], scenario = dayWith({})) => cautionsFor(scenario, tasks).map((caution) => caution.code);

const LONG =
  'Pastry of the house with a name that goes on as long as a name may go on, and then goes on a little longer than that';

/** A day in which every caution speaks and every name is as long as it may be. */
function loudDay() {
  const people: ScenarioInput['people'] = Array.from({ length: 12 }, (_, index) => ({
    id: `p${index}`,
    name: `${index} ${LONG}`.slice(0, 120),
    from: '-1d 06:00',
    until: '+1d 23:00',
  }));
  const steps: ScenarioInput['products'][number]['steps'] = [
    { do: 'shape', minutesPerTray: 5 },
    { do: 'bake', minutes: 16, temperatureC: 200 },
  ];
  const products: ScenarioInput['products'] = Array.from({ length: 20 }, (_, index) => ({
    id: `bun-${index}`,
    name: `${index} ${LONG}`.slice(0, 120),
    dough: 'dough',
    pieceG: 60,
    piecesPerTray: 20,
    coldFilling: true,
    allergens: index === 0 ? [...ALLERGENS] : ALLERGENS.slice(0, 13),
    steps,
  }));
  const equipment = {
    ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, powerKw: 999.9, decks: [{ id: 'deck', trays: 4 }] }],
  };
  const scenario = dayWith({ day: { from: '-1d 06:00', until: '+1d 23:00' }, people, products, equipment });
  const tasks = people.flatMap(({ id }, index) => {
    const product = `bun-${index}`;
    const place = { kind: 'deck' as const, id: 'oven/deck', position: 1 };
    return [
      { ...workOf(id, 0, 900), product, tray: product },
      trayTask('bake', 900, 1900, { product, tray: product, place }),
      trayTask('mix', 0, 10, { id: `mix-${index}` }),
    ];
  });
  return { scenario, tasks };
}

describe('cautionsFor', () => {
  it('says nothing of a plan in which nothing is done', () => {
    expect(cautionsFor(dayWith({}), [])).toEqual([]);
  });

  it('warns of heat when anything is baked and of flour when anything is mixed', () => {
    expect(codes([trayTask('bake', 60, 76)])).toEqual(['HOT_WORK', 'ACRYLAMIDE']);
    expect(codes([trayTask('mix', 0, 10)])).toEqual(['FLOUR_DUST']);
    expect(codes([trayTask('proof', 0, 60)])).toEqual([]);
  });

  it('speaks of acrylamide above 120 C and not at it', () => {
    // Regulation (EU) 2017/2158, recital 3: mainly above 120 C.
    const bakedAt = (temperatureC: number) => dayWithProduct({ steps: [{ do: 'bake', minutes: 60, temperatureC }] });
    expect(codes([trayTask('bake', 60, 120)], bakedAt(120))).not.toContain('ACRYLAMIDE');
    expect(codes([trayTask('bake', 60, 120)], bakedAt(121))).toContain('ACRYLAMIDE');
  });

  it('names allergens only when they are stated', () => {
    const tasks = [trayTask('shape', 0, 10)];
    expect(codes(tasks)).not.toContain('ALLERGENS');
    const says = cautionsFor(dayWithProduct({ allergens: ['milk', 'gluten'] }), tasks).map((caution) => caution.says);
    expect(says[0]).toBe('In every product: gluten, milk.');
    expect(says[1]).toMatch(/^Baking does not destroy allergens\./);
  });

  it('says which products carry a group, the dough counted, products not planned left out', () => {
    const product = (id: string, dough: string) => ({
      id,
      dough,
      pieceG: 60,
      piecesPerTray: 20,
      steps: [{ do: 'shape' as const, minutesPerTray: 5 }],
    });
    const scenario = dayWith({
      doughs: [
        { id: 'plain', allergens: ['gluten'], steps: [{ do: 'mix', minutes: 5 }] },
        { id: 'rich', allergens: ['gluten', 'egg'], steps: [{ do: 'mix', minutes: 5 }] },
      ],
      products: [product('roll', 'plain'), product('plait', 'rich'), { ...product('ring', 'plain'), allergens: ['nuts'] }],
    });
    const tasks = [trayTask('shape', 0, 5, { product: 'roll' }), trayTask('shape', 5, 10, { product: 'plait' })];
    const says = cautionsFor(scenario, tasks).map((caution) => caution.says);
    expect(says.slice(0, 2)).toEqual(['In every product: gluten.', 'Contains egg: plait.']);
    expect(says.join(' ')).not.toMatch(/nuts|ring/);
  });

  it('keeps every caution within 160 characters, each with a source, on the loudest day', () => {
    const { scenario, tasks } = loudDay();
    const cautions = cautionsFor(scenario, tasks);
    expect([...new Set(cautions.map((caution) => caution.code))].sort()).toEqual([...DOCUMENTED].sort());
    for (const { says, source } of cautions) {
      expect(says.length, says).toBeLessThanOrEqual(LONGEST_SAYS);
      expect(source.length).toBeGreaterThan(10);
    }
  });

  it('is the same whatever the order of tasks', () => {
    const { scenario, tasks } = loudDay();
    expect(cautionsFor(scenario, [...tasks].reverse())).toEqual(cautionsFor(scenario, tasks));
  });
});

/** Codes that docs/cautions.md has a heading for. */
const DOCUMENTED = [...readFileSync(new URL('../../docs/cautions.md', import.meta.url), 'utf8').matchAll(/^## ([A-Z_]+)$/gm)].map(
  (match) => match[1] ?? '',
);

describe('sayNames', () => {
  it('fits any names, and says how many it left out', () => {
    const names = fc.array(fc.string({ minLength: 1, maxLength: 40 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(names, (list) => {
        const says = sayNames('Contains nuts:', list);
        expect(says.length).toBeLessThanOrEqual(LONGEST_SAYS);
        const rest = / and (\d+) more\.$/.exec(says);
        if (rest === null) expect(says).toBe(`Contains nuts: ${list.join(', ')}.`);
        else expect(says).toContain(`${list.slice(0, list.length - Number(rest[1])).join(', ')} and`);
      }),
    );
  });
});
