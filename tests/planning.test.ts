// Planning as a whole on days small enough to check by hand.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../src/check/judge.ts';
import { clockOf, minuteAt } from '../src/model/clock.ts';
import { makePlan } from '../src/planning.ts';
import { readScenario } from '../src/read/readScenario.ts';
import { bakery, type Few } from './compile/bakery.ts';
import { planned } from './laws/planned.ts';

const ONE_PERSON = [{ id: 'ana', from: '03:00', until: '12:00' }];

describe('a day that cannot all be done', () => {
  // Two breads, each a batch of its own: 10 minutes to mix and 10 to shape, all by hand. 40 minutes of work in a day of 25:
  // one tray with its batch is 20 minutes, so leaving one tray out is enough.
  const two: Few = {
    breads: ['rye', 'wheat'].map((id) => ({ id, dough: id, pieceG: 100, piecesPerTray: 10, pieces: 10 })),
    people: ONE_PERSON,
    until: '03:25',
    goals: { leftOutTray: 100 },
  };

  it('the floor does not count a tray and its batch as two', async () => {
    const plan = await planned(bakery(two), 50);
    expect(plan.score.leftOutTrays).toBe(1);
    expect(plan.score.lowerBound).toBe(100);
    expect(plan.bound.argument).toBe('omission');
  });

  it('each reason, acted on, lets the tray in', async () => {
    const plan = await planned(bakery(two), 50);
    expect(plan.leftOut.map(({ trays }) => trays)).toEqual([1]);
    const rules = plan.leftOut.flatMap(({ reasons }) => reasons.map(({ rule }) => rule)).sort();
    expect(rules).toEqual(['DAY_WINDOW', 'PERSON_BUSY']);
    const another = await planned(bakery({ ...two, people: [...ONE_PERSON, { id: 'ben', from: '03:00', until: '12:00' }] }), 50);
    expect(another.score.leftOutTrays).toBe(0);
    const longer = await planned(bakery({ ...two, until: '04:00' }), 50);
    expect(longer.score.leftOutTrays).toBe(0);
  });

  it('says so when no single thing is in the way', async () => {
    const bench = { places: 1 };
    const plan = await planned(bakery({ ...two, until: '03:20', equipment: { bench }, bowlKg: 1 }), 50);
    for (const { reasons } of plan.leftOut) expect(reasons.length).toBeGreaterThan(0);
  });

  it('without time for reasons it says that, and the plan is whole', async () => {
    let at = 0;
    const now = () => {
      at += 40;
      return at;
    };
    const plan = await makePlan(bakery(two), { seconds: 0.5, now, version: 'test' });
    expect(plan.stopped).toBe('time');
    expect(plan.leftOut.flatMap(({ reasons }) => reasons.map(({ says }) => says))).toEqual([
      'The time limit left no time to try out what is in its way. Plan again with more seconds to learn it.',
    ]);
  });
});

describe('what a tray is worth', () => {
  it('one that costs more than leaving it out is left out', async () => {
    // 10 minutes to mix, 10 to shape, each by hand: the second bread is ready at 40, 20 of them for 5 a minute.
    const two: Few = {
      breads: ['rye', 'wheat'].map((id) => ({ id, dough: id, pieceG: 100, piecesPerTray: 10, pieces: 10 })),
      people: ONE_PERSON,
      until: '12:00',
      goals: { leftOutTray: 60, finishMinute: 5 },
    };
    const plan = await planned(bakery(two), 200);
    expect(plan.score.cost).toBeLessThanOrEqual(160);
    expect(plan.score.leftOutTrays).toBeGreaterThan(0);
  });
});

describe('a bread baked twice', () => {
  it('finds both bakes a deck, one right after the other', async () => {
    const bake = { do: 'bake', minutes: 10, load: 0, unload: 0 } as const;
    const decks = ['a', 'b'].map((id) => ({ id, trays: 2, minC: 100, maxC: 300 }));
    const day = bakery({
      breads: [{ id: 'rusk', dough: 'one', pieceG: 100, piecesPerTray: 10, pieces: 30 }],
      people: ONE_PERSON,
      until: '12:00',
      steps: [
        { do: 'shape', minutesPerTray: 10 },
        { ...bake, temperatureC: [190, 250] },
        { ...bake, temperatureC: [190, 220] },
      ],
      equipment: { ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks }] },
    });
    const plan = await planned(day, 50);
    expect(plan.score.leftOutTrays).toBe(0);
    expect(plan.tasks.filter(({ step }) => step === 'bake')).toHaveLength(6);
  });
});

describe('what the steps say of time', () => {
  const bun = { id: 'bun', dough: 'one', pieceG: 100, piecesPerTray: 10, pieces: 10 };

  it('a step begins when the one before ends, loading and unloading in between', async () => {
    const oven = { id: 'oven', heatUpCPerMinute: 10, coolDownCPerMinute: 5, decks: [{ id: 'deck', trays: 1, startsAtC: 200 }] };
    const plan = await planned(
      bakery({
        breads: [bun],
        steps: [
          { do: 'rest', minutes: 20 },
          { do: 'bake', minutes: 15, temperatureC: 200, load: 2, unload: 3 },
          { do: 'cool', minutes: 5 },
        ],
        equipment: { ovens: [oven] },
      }),
      20,
    );
    // mix 0-10, rest 10-30, load 30-32, bake 32-47, unload 47-50, cool 50-55: proved, for nothing waits.
    expect(plan.tasks.map(({ step, start, end }) => [step, start, end])).toEqual([
      ['mix', 0, 10],
      ['rest', 10, 30],
      ['bake', 32, 47],
      ['cool', 50, 55],
    ]);
    expect(plan.holds).toBe('optimal');
    expect(plan.score.temperatureChanges).toBe(0);
  });

  it('a tray may wait where the step before allows it, and no longer', async () => {
    const people = [{ ...ONE_PERSON[0], id: 'ana', from: '03:00', until: '12:00', breaks: [{ from: '03:10', until: '03:40' }] }];
    const day = (waitUpTo: number): Few => ({
      breads: [bun],
      people,
      steps: [
        { do: 'rest', minutes: 0, waitUpTo },
        { do: 'finish', minutesPerTray: 5 },
      ],
    });
    // Mixed 03:00 to 03:10; then a break until 03:40. With a wait of 30 the tray waits, with 29 the mixing moves.
    expect((await planned(bakery(day(30)), 20)).score.finishMinute).toBe(45);
    expect((await planned(bakery(day(29)), 20)).score.finishMinute).toBe(55);
  });
});

describe('the aim start-late', () => {
  it('starts as late as the order allows, at no lateness', async () => {
    const day = (aim: 'start-late' | 'finish-early'): Few => ({
      breads: [{ id: 'bun', dough: 'one', pieceG: 100, piecesPerTray: 10, pieces: 10 }],
      people: ONE_PERSON,
      goals: { aim },
    });
    const late = await planned(bakery(day('start-late')), 400);
    const early = await planned(bakery(day('finish-early')), 50);
    expect(early.score.firstHandsOnMinute).toBe(0);
    expect(late.score.lateTrayMinutes).toBe(0);
    // 10 minutes to mix, 10 to shape, ready by 06:00 at the latest: up at 05:40.
    const scenario = bakery(day('start-late'));
    expect(late.score.firstHandsOnMinute).toBe(minuteAt(clockOf(scenario), '05:40'));
  });
});

describe('a limit of time', () => {
  it('is used to its end on two workers, also on a day the learning solver has no model of', async () => {
    const read = readScenario(readFileSync(new URL('../scenarios/rack-oven.yaml', import.meta.url), 'utf8'));
    if (!read.ok) throw new Error('the scenario cannot be read');
    const pause = () => new Promise<void>((resume) => setImmediate(resume));
    const plan = await makePlan(read.value, { seconds: 1.5, workers: 2, now: () => performance.now(), pause, version: 'test' });
    expect(judge(read.value, plan).breaches).toEqual([]);
    expect(plan.stopped).toBe('time');
  });
});
