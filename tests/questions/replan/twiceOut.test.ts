// A deck told out of use twice, in spans that overlap, touch or lie apart: planned anew, nothing is in it while it is out of use.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clockOf, wallClockAt } from '../../../src/model/clock.ts';
import { happenedSchema } from '../../../src/model/happened.ts';
import { replan } from '../../../src/questions/replan.ts';
import { askingFor } from '../askingFor.ts';
import { threeLoaves, threeLoavesPlan } from './threeLoaves.ts';

const NOW = 50;

const clock = (minute: number): string => wallClockAt(clockOf(threeLoaves), minute);

async function bakedAfter(spans: readonly (readonly [number, number])[]) {
  const told = spans.map(([from, until]) => ({ what: 'out-of-use', deck: 'oven/top', from: clock(from), until: clock(until) }));
  const at = { now: NOW, happened: happenedSchema.parse({ happened: told }), faultsOf: () => [] };
  const outcome = await replan(threeLoaves, threeLoavesPlan, at, askingFor(), { effort: 60 });
  if (!outcome.ok) throw new Error(outcome.errors.map(({ says }) => says).join(' '));
  return outcome.answer.plan.tasks.filter(({ place }) => place?.id === 'oven/top');
}

test.each([
  ['one within the other', [50, 130], [60, 90]],
  ['one before the other is over', [50, 100], [80, 130]],
  ['the same twice', [55, 130], [55, 130]],
  ['one right after the other', [50, 90], [90, 130]],
  ['apart', [50, 70], [100, 130]],
] as const)('%s', async (_, one, other) => {
  for (const spans of [
    [one, other],
    [other, one],
  ]) {
    const baked = await bakedAfter(spans);
    for (const { start, end } of baked) for (const [from, until] of spans) expect(end <= from || start >= until).toBe(true);
  }
});

test('any spans: a plan that keeps every rule, as makePlan judges it', async () => {
  const span = fc.tuple(fc.integer({ min: NOW, max: 200 }), fc.integer({ min: 1, max: 120 }));
  const property = fc.asyncProperty(fc.array(span, { minLength: 1, maxLength: 4 }), async (drawn) => {
    const spans = drawn.map(([from, minutes]) => [from, from + minutes] as const);
    const baked = await bakedAfter(spans);
    for (const { start, end } of baked) for (const [from, until] of spans) expect(end <= from || start >= until).toBe(true);
  });
  await fc.assert(property, { numRuns: 25 });
});
