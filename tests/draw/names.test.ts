// Tests of src/draw/shortTags.ts, names.ts, kinds.ts: tags differ, names are told apart, colour goes by dough.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kindsOf } from '../../src/draw/kinds.ts';
import { nameIn, namesOf, withNoun } from '../../src/draw/names.ts';
import { shortTags } from '../../src/draw/shortTags.ts';
import { PLANS } from './fixtures/plans.ts';
import { smallPlan } from './smallPlan.ts';

describe('shortTags', () => {
  test('come from the name, and avoid letters that look the same from afar', () => {
    const named = (name: string) => ({ id: name, name });
    expect(shortTags(['Cardamom knot', 'Seeded tin', 'Village loaf', 'Rye'].map(named))).toEqual(['Ck', 'St', 'Va', 'Ry']);
    expect(shortTags(['a', 'b', 'a', 'Ab'].map(named))).toEqual(['A', 'B', 'A2', 'Ab']);
  });

  test('are all different and short, whatever the names', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }), { maxLength: 60 }), (names) => {
        const tags = shortTags(names.map((name, index) => ({ id: `p${index}`, name })));
        expect(new Set(tags).size).toBe(names.length);
        for (const tag of tags) expect(tag).toMatch(/^[A-Z0-9][a-z0-9]{0,2}$/);
      }),
    );
  });
});

describe('names', () => {
  test('a name in a sentence has its noun once', () => {
    expect(withNoun('Bottom', 'deck')).toBe('Bottom deck');
    expect(withNoun('Rack oven', 'deck')).toBe('Rack oven');
    expect(withNoun('Cold room', 'retarder')).toBe('Cold room');
  });

  test('two things of one name are told apart by id', () => {
    const decks = [
      { id: 'a/top', name: 'Top' },
      { id: 'b/top', name: 'Top' },
      { id: 'b/low', name: 'Low' },
    ];
    expect(decks.map(({ id }) => nameIn(decks, id))).toEqual(['Top (a top)', 'Top (b top)', 'Low']);
  });

  test('a batch has its number only where its dough has others', () => {
    const batches = ['wheat-1', 'wheat-2'].map((id) => ({ id, dough: 'wheat', kg: 4, trays: [] }));
    expect(namesOf(smallPlan([], { batches })).batchOrder('wheat-2')).toBe('batch 2 of 2');
    expect(namesOf(smallPlan([])).batchOrder('wheat-1')).toBe('');
  });
});

describe('kinds', () => {
  const plan = PLANS.morning;
  if (plan === undefined) throw new Error('no morning');
  const kinds = kindsOf(plan);

  test('products of one dough share its colour and never a hatch', () => {
    const knot = kinds.ofProduct('cardamom-knot');
    const roll = kinds.ofProduct('milk-roll');
    expect(knot.colour).toBe(roll.colour);
    expect(knot.colour).toBe(kinds.ofBatch('enriched-1').colour);
    expect(knot.colour).not.toBe(kinds.ofProduct('seeded-tin').colour);
    expect(new Set(kinds.all.map(({ hatch }) => hatch)).size).toBe(kinds.all.length);
    expect(new Set(kinds.all.map(({ tag }) => tag)).size).toBe(kinds.all.length);
  });

  test('a product the bakehouse does not name is an error', () => {
    expect(() => kinds.ofProduct('nowhere')).toThrow('product nowhere');
  });
});
