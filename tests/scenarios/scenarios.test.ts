import { describe, expect, it } from 'vitest';
import { batchKg } from '../../src/dough/batchKg.ts';
import { trayDoughKg } from '../../src/dough/trayDoughKg.ts';
import { traysFor } from '../../src/dough/traysFor.ts';
import { clockChanges, clockOf, minuteAt, wallClockAt } from '../../src/model/clock.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { rangeOf } from '../../src/model/units.ts';
import { scenarioNamed, scenarioNames, scenariosReadme, scenarioText } from './allScenarios.ts';

type Product = Scenario['products'][number];

function productOf(scenario: Scenario, id: string): Product {
  const product = scenario.products.find((each) => each.id === id);
  if (product === undefined) throw new Error(`no product ${id}`);
  return product;
}

function traysOf(scenario: Scenario, product: Product): number {
  const pieces = scenario.orders.filter((order) => order.product === product.id).reduce((sum, order) => sum + order.pieces, 0);
  return traysFor(pieces, product.piecesPerTray);
}

function sizeOf(scenario: Scenario): { trays: number; kg: string } {
  const trays = scenario.products.reduce((sum, product) => sum + traysOf(scenario, product), 0);
  const kg = batchKg(
    scenario.products.map((product) => traysOf(scenario, product) * trayDoughKg(product)),
    0,
  );
  return { trays, kg: kg.toFixed(2) };
}

/** The range of minutes of a product's first step of a kind. */
function minutesOf(product: Product, kind: 'proof' | 'bake') {
  const step = product.steps.find((each) => each.do === kind);
  if (step === undefined || (step.do !== 'proof' && step.do !== 'bake')) throw new Error(`${product.id} has no ${kind}`);
  return rangeOf(step.minutes);
}

describe.each(scenarioNames)('%s', (name) => {
  it('reads without an error', () => {
    expect(scenarioNamed(name).scenario).toBe(1);
  });

  it('states its trays and kilograms rightly, in the file and in the list', () => {
    const { trays, kg } = sizeOf(scenarioNamed(name));
    expect(scenarioText(name)).toContain(`\n# ${trays} trays, ${kg} kg of dough on them.\n`);
    const row = scenariosReadme.split('\n').find((line) => line.startsWith(`| [${name}](${name}.yaml) |`));
    expect(row).toMatch(new RegExp(`\\| ${trays} \\| ${kg.replace('.', '\\.')} \\| (yes|no) \\|$`));
  });

  it('gives every formula its flours as 100 percent and every batch a bowl', () => {
    const scenario = scenarioNamed(name);
    const flours = ['flour', 'wholemeal', 'rye', 'oats', 'buckwheat'];
    const bowls = scenario.equipment.mixers?.map((mixer) => mixer.bowlKg) ?? [Number.POSITIVE_INFINITY];
    for (const dough of scenario.doughs) {
      const flourPercent = flours.reduce((sum, flour) => sum + (dough.formula?.[flour] ?? 0), 0);
      if (dough.formula !== undefined) expect(flourPercent).toBe(100);
      const ofDough = scenario.products.filter((product) => product.dough === dough.id);
      for (const product of ofDough)
        expect(batchKg([trayDoughKg(product)], dough.lossPercent)).toBeLessThanOrEqual(Math.max(...bowls));
    }
  });
});

describe('what the scenarios say of the trade', () => {
  const saturday = scenarioNamed('two-hands-and-leaven');

  it('proofs a slow leaven dough about three hours where a yeasted one takes two', () => {
    // Common practice.
    const leaven = minutesOf(productOf(saturday, 'plum-knot'), 'proof');
    const yeasted = minutesOf(productOf(saturday, 'milk-roll'), 'proof');
    expect(leaven.min).toBeLessThanOrEqual(180);
    expect(leaven.max).toBeGreaterThanOrEqual(180);
    expect(yeasted.min).toBeLessThanOrEqual(120);
    expect(yeasted.max).toBeGreaterThanOrEqual(120);
  });

  it('bakes small buns about 16 minutes near 200 C', () => {
    // Common practice; 33 pieces of 38 g are 1,254 g.
    const bun = productOf(saturday, 'seeded-bun');
    const bake = bun.steps.find((step) => step.do === 'bake');
    expect(minutesOf(bun, 'bake')).toEqual({ min: 16, max: 16 });
    expect(bake?.do === 'bake' && rangeOf(bake.temperatureC)).toEqual({ min: 198, max: 204 });
    expect(trayDoughKg(bun)).toBe(1.254);
  });

  it('bakes two-ounce milk rolls 18 to 20 minutes at a range that holds 400 F', () => {
    // USDA school lunch recipes, 1988, soft rolls: 2 oz, 400 F, 18 to 20 minutes. An ounce is 28.35 g.
    const roll = productOf(saturday, 'milk-roll');
    const bake = roll.steps.find((step) => step.do === 'bake');
    expect(Math.abs(roll.pieceG - 2 * 28.35)).toBeLessThan(0.5);
    expect(minutesOf(roll, 'bake')).toEqual({ min: 18, max: 20 });
    const rangeC = bake?.do === 'bake' ? rangeOf(bake.temperatureC) : { min: 0, max: 0 };
    expect(((400 - 32) * 5) / 9).toBeGreaterThan(rangeC.min);
    expect(((400 - 32) * 5) / 9).toBeLessThan(rangeC.max);
  });

  it('bakes soft rolls in moving air 12 to 14 minutes at a range that holds 350 F, 50 to a tray', () => {
    // USDA school lunch recipes, 1988: convection 350 F, 12 to 14 minutes, 50 on an 18 x 26 in tray.
    for (const name of ['rack-oven', 'central-bakery']) {
      const roll = productOf(scenarioNamed(name), 'soft-roll');
      const bake = roll.steps.find((step) => step.do === 'bake');
      const rangeC = bake?.do === 'bake' ? rangeOf(bake.temperatureC) : { min: 0, max: 0 };
      expect(roll.piecesPerTray).toBe(50);
      expect(minutesOf(roll, 'bake')).toEqual({ min: 12, max: 14 });
      expect(((350 - 32) * 5) / 9).toBeGreaterThan(rangeC.min);
      expect(((350 - 32) * 5) / 9).toBeLessThan(rangeC.max);
    }
  });

  it('gives rack ovens 15 to 20 trays', () => {
    // Gisslen, Professional Baking, 2008, ch. 3: racks made for rack ovens usually take 15 to 20 trays.
    const racks = scenarioNames
      .flatMap((name) => scenarioNamed(name).equipment.ovens)
      .filter((oven) => oven.loading === 'together')
      .flatMap((oven) => oven.decks.map((deck) => deck.trays));
    expect(racks).toHaveLength(3);
    for (const trays of racks) {
      expect(trays).toBeGreaterThanOrEqual(15);
      expect(trays).toBeLessThanOrEqual(20);
    }
  });
});

describe('what single files say', () => {
  it('night-the-clocks-go-forward: ten real hours, a jump at 02:00, two hours of proof from 01:30 to 04:30', () => {
    // Directive 2000/84/EC: summer time begins on the last Sunday of March at 01:00 UTC.
    const scenario = scenarioNamed('night-the-clocks-go-forward');
    const clock = clockOf(scenario);
    expect(clock.minutes).toBe(600);
    expect(clockChanges(clock)).toEqual([{ minute: 240, movesBy: 60 }]);
    expect(wallClockAt(clock, minuteAt(clock, '01:30') + 120)).toBe('04:30');
    expect(minuteAt(clock, '07:30') - minuteAt(clock, '-1d 22:30')).toBe(8 * 60);
  });

  it('more-than-the-oven-takes: no more than twelve of the sixteen trays can be baked', () => {
    const scenario = scenarioNamed('more-than-the-oven-takes');
    const [dough] = scenario.doughs;
    const [product] = scenario.products;
    if (dough === undefined || product === undefined) throw new Error('the scenario has a dough and a product');
    let firstBake = 0;
    for (const step of [...dough.steps, ...product.steps]) {
      if (step.do === 'bake') break;
      firstBake += 'minutesPerTray' in step ? step.minutesPerTray : rangeOf(step.minutes).min;
    }
    const bake = product.steps.find((step) => step.do === 'bake');
    const cool = product.steps.find((step) => step.do === 'cool');
    if (bake?.do !== 'bake' || cool?.do !== 'cool') throw new Error('the product is baked and cooled');
    firstBake += bake.load;
    const lastEnd = clockOf(scenario).minutes - bake.unload - rangeOf(cool.minutes).min;
    expect([firstBake, lastEnd, lastEnd - firstBake]).toEqual([167, 449, 282]);
    const places = scenario.equipment.ovens.flatMap((oven) => oven.decks).reduce((sum, deck) => sum + deck.trays, 0);
    expect(places * Math.floor((lastEnd - firstBake) / rangeOf(bake.minutes).min)).toBe(12);
    expect(traysOf(scenario, product)).toBe(16);
  });

  it('three-deliveries: the ciabatta loses what the published one has over', () => {
    // King Arthur Flour, professional formulas, Ciabatta with Biga: 17.92 kg, 31 pieces of 0.57 kg, 0.25 kg over.
    const lossPercent = (0.25 / 17.92) * 100;
    const dough = scenarioNamed('three-deliveries').doughs.find((each) => each.id === 'ciabatta-dough');
    expect(dough?.lossPercent).toBeCloseTo(lossPercent, 1);
  });

  it('only-what-must-be-said: leaves out everything that may be left out', () => {
    const text = scenarioText('only-what-must-be-said');
    for (const word of [
      'people:',
      'bench:',
      'mixers:',
      'coolingRack:',
      'goals:',
      'formula:',
      'allergens:',
      'retarders:',
      'load',
    ]) {
      expect(text).not.toContain(word);
    }
  });

  it('central-bakery: 200 trays and eight people', () => {
    const scenario = scenarioNamed('central-bakery');
    expect(sizeOf(scenario).trays).toBe(200);
    expect(scenario.people).toHaveLength(8);
  });
});
