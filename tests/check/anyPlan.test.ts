// Whatever is handed in, however wild, the judge answers: each breach names a rule, tasks of the plan and what to do.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { HANDS_ON_KINDS, PLACE_KINDS } from '../../src/model/plan.ts';
import { RULES } from '../../src/model/rules.ts';
import { STEP_KINDS } from '../../src/model/steps.ts';
import { type WrittenPlan, writtenPlanSchema } from '../../src/model/writtenPlan.ts';
import { dayUnderway } from '../rules/plans/dayUnderway.ts';
import { bare, scenario } from '../rules/plans/marketMorning.ts';

const minute = fc.integer({ min: -100, max: 500 });
const ids = [
  'field-loaf',
  'milk-bun',
  'milk-bun-1',
  'country-1',
  'warm-box',
  'big',
  'hearth/upper',
  'hatch/only',
  'bench',
  'nobody',
];
const word = fc.constantFrom(...ids);
const maybe = <T>(some: fc.Arbitrary<T>) => fc.option(some, { nil: undefined });

const task = fc.record({
  id: maybe(word),
  step: fc.constantFrom(...STEP_KINDS),
  product: maybe(word),
  batch: maybe(word),
  tray: maybe(word),
  start: minute,
  end: minute,
  startsAt: maybe(word),
  place: maybe(fc.record({ kind: fc.constantFrom(...PLACE_KINDS), id: word, position: fc.integer({ min: 1, max: 4 }) })),
  handsOn: fc.array(
    fc.record({
      person: fc.constantFrom('ana', 'bem', 'eva'),
      start: minute,
      end: minute,
      for: fc.constantFrom(...HANDS_ON_KINDS),
    }),
    { maxLength: 3 },
  ),
});
const celsius = fc.double({ min: -50, max: 600, noNaN: true });
const setPoint = fc.record({ start: minute, end: minute, fromC: celsius, toC: celsius });
const anyPlan: fc.Arbitrary<WrittenPlan> = fc.record({
  tasks: fc.array(task, { maxLength: 30 }),
  decks: fc.array(fc.record({ id: word, setPoints: fc.array(setPoint, { maxLength: 5 }) }), { maxLength: 4 }),
  score: maybe(fc.record({ cost: celsius, lowerBound: celsius, gap: celsius })),
  leftOut: maybe(
    fc.array(fc.record({ product: word, trays: fc.integer({ min: 1, max: 9 }), reasons: fc.constant([]) }), { maxLength: 2 }),
  ),
});

const keepsAll = dayUnderway(scenario, bare, 100);
for (const record of keepsAll.underway.tasks) record.keeps = ['time', 'place', 'people'];
keepsAll.underway.out = [{ kind: 'deck', id: 'hearth/upper', from: 90, until: 200 }];

describe('any plan at all', () => {
  it('is judged, the same way twice, in words that hold together', () => {
    fc.assert(
      fc.property(anyPlan, fc.constantFrom(scenario, keepsAll), (plan, day) => {
        expect(writtenPlanSchema.safeParse(plan).success).toBe(true);
        const verdict = judge(day, plan);
        expect(judge(day, plan)).toEqual(verdict);
        for (const { rule, says, doThis } of verdict.breaches) {
          expect(doThis).toBe(RULES[rule].doThis);
          expect(says).toMatch(/^.+\.$/);
          expect(says).not.toMatch(/undefined|NaN|null|\[object/);
        }
        expect(Number.isFinite(verdict.figures.cost)).toBe(true);
        expect(verdict.figures.leftOutTrays).toBeLessThanOrEqual(4);
      }),
    );
  });

  it('never passes with a tray on it unless every step of that tray is there', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { breaches } = judge(scenario, plan);
        const hasWork = plan.tasks.length > 0;
        // Thirty wild tasks cannot make up a whole tray by chance: some rule has to say so.
        expect(breaches.length > 0 || !hasWork).toBe(true);
      }),
    );
  });
});
