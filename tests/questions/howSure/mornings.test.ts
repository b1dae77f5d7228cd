// What must hold of every simulated morning, on days drawn at random: the plan itself when nothing strays, and the rules of the
// bakehouse when everything does. Counted here from the times alone.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgedDayOf } from '../../../src/check/judgedDay.ts';
import type { Plan } from '../../../src/model/plan.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { rangeOf } from '../../../src/model/units.ts';
import { normalsFrom } from '../../../src/questions/howSure/chance.ts';
import type { Course, Lag } from '../../../src/questions/howSure/course.ts';
import { courseOf } from '../../../src/questions/howSure/courseOf.ts';
import { Mornings } from '../../../src/questions/howSure/mornings.ts';
import { anyScenario } from '../../laws/anyScenario.ts';
import { planned } from '../../laws/planned.ts';

const EFFORT = 8;
const NEARLY = 0.01;

/** Spreads far beyond the usual ones, so that mornings fall apart. */
const WILD = {
  mix: 30,
  bulk: 30,
  proof: 30,
  rest: 30,
  retard: 20,
  shape: 40,
  divide: 40,
  finish: 40,
  fold: 40,
  bake: 20,
  load: 60,
  unload: 60,
  cool: 30,
};

function strayed(course: Course, seed: number): Mornings {
  const mornings = new Mornings(course);
  const chances = new Float64Array(Math.max(1, course.chances) * mornings.block);
  normalsFrom(seed)(chances);
  mornings.run(chances, Math.min(20, mornings.block), null);
  return mornings;
}

type Span = { readonly from: number; readonly until: number };

/** Most spans at once; spans that only touch are not at once. */
function mostAtOnce(spans: readonly Span[]): number {
  const edges = spans.flatMap(({ from, until }) =>
    until - from > NEARLY
      ? [
          { at: from + NEARLY, by: 1 },
          { at: until, by: -1 },
        ]
      : [],
  );
  edges.sort((a, b) => a.at - b.at || a.by - b.by);
  let now = 0;
  return edges.reduce((most, { by }) => {
    now += by;
    return Math.max(most, now);
  }, 0);
}

function timeOf(mornings: Mornings, morning: number, { from, minutes, draw, plus }: Lag): number {
  const factor = draw < 0 ? 1 : (mornings.factorsOf(draw)[morning] as number);
  return (mornings.timesOf(from)[morning] as number) + minutes * factor + plus;
}

/** Trays and batches in each pool of places; on decks until they could come out. */
function expectRoom(course: Course, mornings: Mornings, morning: number): void {
  for (const [index, { id, room }] of course.pools.entries()) {
    const spans = course.uses
      .filter(({ pool }) => pool === index)
      .map(({ takenAt, lead, freed, couldBeFreed }) => ({
        from: timeOf(mornings, morning, { from: takenAt, ...lead, plus: 0 }),
        until:
          couldBeFreed === undefined ? timeOf(mornings, morning, freed) : (mornings.timesOf(couldBeFreed)[morning] as number),
      }));
    expect({ id, isWithin: mostAtOnce(spans) <= room }).toEqual({ id, isWithin: true });
  }
}

function expectOneThingAtATime(course: Course, mornings: Mornings, morning: number): void {
  for (const { id, pieces } of course.people) {
    const spans = pieces.map(({ moment, minutes, draw }) => ({
      from: mornings.timesOf(moment)[morning] as number,
      until: timeOf(mornings, morning, { from: moment, minutes, draw, plus: 0 }),
    }));
    expect({ id, atOnce: mostAtOnce(spans) <= 1 }).toEqual({ id, atOnce: true });
  }
}

/** Between two bakes that share no temperature a deck has the minutes its oven needs. */
function expectHeat(scenario: Scenario, plan: Plan, course: Course, mornings: Mornings, morning: number): void {
  const day = judgedDayOf(scenario, plan);
  const bakes = new Map<string, { from: number; until: number; minC: number; maxC: number }[]>();
  const placeOf = new Map<string, string>();
  for (const tray of day.trays)
    for (const run of tray.runs) if (run?.step.do === 'bake') placeOf.set(tray.id, run.named.task.place?.id ?? '');
  for (const tray of course.trays) {
    const run = day.trays.find(({ id }) => id === tray.id)?.runs.find((each) => each?.step.do === 'bake');
    const [watch] = tray.bread;
    if (run?.step.do !== 'bake' || watch === undefined) continue;
    const { min, max } = rangeOf(run.step.temperatureC);
    const deck = placeOf.get(tray.id) ?? '';
    const from = mornings.timesOf(watch.limit.from)[morning] as number;
    bakes.set(deck, [
      ...(bakes.get(deck) ?? []),
      { from, until: mornings.timesOf(watch.moment)[morning] as number, minC: min, maxC: max },
    ]);
  }
  for (const [deck, own] of bakes) {
    const oven = day.decks.get(deck)?.oven;
    if (oven === undefined) throw new Error(`no oven of ${deck}`);
    for (const a of own)
      for (const b of own) {
        if (a.maxC >= b.minC && b.maxC >= a.minC) continue;
        const [first, second] = a.from <= b.from ? [a, b] : [b, a];
        const needed =
          second.minC > first.maxC
            ? (second.minC - first.maxC) / oven.heatUpCPerMinute
            : (first.minC - second.maxC) / oven.coolDownCPerMinute;
        expect(second.from - first.until).toBeGreaterThan(needed - NEARLY);
      }
  }
}

describe('on days drawn at random', () => {
  test('a morning in which nothing strays is the plan, minute by minute', async () => {
    await fc.assert(
      fc.asyncProperty(anyScenario, async (scenario) => {
        const course = courseOf(scenario, await planned(scenario, EFFORT));
        const mornings = new Mornings(course);
        mornings.run(new Float64Array(Math.max(1, course.chances) * mornings.block), 1, null);
        expect(course.trays.every(({ ready }) => mornings.timesOf(ready)[0] === course.moments[ready]?.planned)).toBe(true);
        for (const [index, { planned: minute }] of course.moments.entries())
          expect(Math.abs((mornings.timesOf(index)[0] as number) - minute)).toBeLessThan(NEARLY);
      }),
      { numRuns: 5, seed: 11 },
    );
  });

  test('places hold no more than they have room for, people do one thing at a time, decks get their minutes to heat', async () => {
    await fc.assert(
      fc.asyncProperty(anyScenario, fc.nat(1000), async (scenario, seed) => {
        const plan = await planned(scenario, EFFORT);
        const wild = { ...scenario, spread: WILD };
        const course = courseOf(wild, plan);
        const mornings = strayed(course, seed);
        for (let morning = 0; morning < mornings.size; morning++) {
          expectRoom(course, mornings, morning);
          expectOneThingAtATime(course, mornings, morning);
          expectHeat(wild, plan, course, mornings, morning);
        }
      }),
      { numRuns: 6, seed: 12 },
    );
  });

  test('no step takes less than half of its least, and none begins before what it follows', async () => {
    await fc.assert(
      fc.asyncProperty(anyScenario, async (scenario) => {
        const course = courseOf({ ...scenario, spread: WILD }, await planned(scenario, EFFORT));
        const mornings = strayed(course, 5);
        for (const [index, { after }] of course.moments.entries())
          for (const lag of after) {
            const times = mornings.timesOf(index);
            for (let morning = 0; morning < mornings.size; morning++)
              expect(times[morning]).toBeGreaterThanOrEqual(timeOf(mornings, morning, lag) - 1e-9);
            if (lag.draw >= 0) expect(Math.min(...mornings.factorsOf(lag.draw))).toBeGreaterThanOrEqual(0.5);
          }
      }),
      { numRuns: 3, seed: 13 },
    );
  });
});
