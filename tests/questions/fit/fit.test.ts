// `fit`: the whole answer on days of which it is known by arithmetic, against a plan in trouble, and when the time is over.
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/check/judge.ts';
import { fitAnswerSchema } from '../../../src/model/fitAnswer.ts';
import { type Scenario, scenarioSchema } from '../../../src/model/scenario.ts';
import { fit as doesItFit, type FitQuestion } from '../../../src/questions/fit.ts';
import { planned } from '../../laws/planned.ts';
import { askingFor } from '../askingFor.ts';
import { patching } from '../whatWouldFit/actedOn.ts';

type Order = Scenario['orders'][number];

async function asked(before: Scenario, added: readonly Order[], more: Partial<FitQuestion> = {}, asking = askingFor()) {
  const after = { ...before, orders: [...before.orders, ...added] };
  const answer = await doesItFit({ day: { before, after }, patch: patching, effort: 60, rounds: 60, ...more }, asking);
  expect(fitAnswerSchema.parse(JSON.parse(JSON.stringify(answer)))).toEqual(answer);
  expect(judge(before, answer.base).breaches).toEqual([]);
  expect(judge(after, answer.with).breaches).toEqual([]);
  return answer;
}

/** One deck of two trays, hot from the start; buns bake 20 minutes after 10 of mixing. Twelve trays an hour and a half. */
const morning = scenarioSchema.parse({
  scenario: 1,
  name: 'Buns and rolls',
  date: '2026-05-16',
  timeZone: 'Europe/Lisbon',
  day: { from: '03:00', until: '07:00' },
  equipment: {
    ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', trays: 2, startsAtC: 220 }] }],
  },
  doughs: [{ id: 'white', maxBatchKg: 1, steps: [{ do: 'mix', minutes: 10, handsOn: 0 }] }],
  products: ['bun', 'roll'].map((id) => ({
    id,
    dough: 'white',
    pieceG: 100,
    piecesPerTray: 10,
    steps: [{ do: 'bake', minutes: 20, temperatureC: 220 }],
  })),
  orders: [{ product: 'bun', pieces: 40, readyBy: '04:10' }],
});

describe('a day with an hour of oven, four trays of six taken', () => {
  it('two trays more fit by ten past four, and no more; alone they could be there at half past three', async () => {
    const answer = await asked(morning, [{ product: 'roll', pieces: 15, readyBy: '04:10' }]);
    expect(answer).toMatchObject({ fits: true, isProved: true, reasons: [], wouldFitIf: null, notReached: [] });
    expect(answer.most).toMatchObject([{ mostPieces: 20, limitPieces: 20, isExact: true }]);
    expect(answer.most[0]?.says).toContain('20 roll fit by 04:10, and no more, proved');
    // Four trays of buns by 04:10 leave the first load or any other.
    expect(answer.readyTimes).toMatchObject([{ earliest: '03:30', isEarliest: true, latest: '07:00' }]);
    expect(answer.cost.makespanMinutes).toBe(20);
    expect(answer.cost).toMatchObject({ lateTrayMinutes: 0, leftOutTrays: 0, temperatureChanges: 0 });
    expect(answer.busiest.busiest).toEqual({ kind: 'deck', id: 'oven/deck' });
  });

  it('three trays do not, proved, with the reason and what would make them fit', { timeout: 60_000 }, async () => {
    const answer = await asked(morning, [{ product: 'roll', pieces: 30, readyBy: '04:10' }]);
    expect(answer).toMatchObject({ fits: false, isProved: true });
    expect(answer.says).toBe('It does not fit: no plan has 30 roll for 04:10 and the rest ready on time, proved.');
    expect(answer.reasons[0]?.says).toMatch(/^No plan has everything ready on time: /);
    expect(answer.most).toMatchObject([{ mostPieces: 20, limitPieces: 20, isExact: true }]);
    expect(answer.readyTimes).toMatchObject([{ earliest: '04:30', isEarliest: true }]);
    const offered = answer.wouldFitIf?.changes.map(({ kind, amount, isSmallest }) => [kind, amount, isSmallest]);
    expect(offered).toEqual([
      ['start-earlier', 20, true],
      ['deck-place', 1, true],
      ['move-order', 20, true],
      ['drop-pieces', 10, true],
    ]);
  });

  it('several orders are one question, each with its own most and times', { timeout: 60_000 }, async () => {
    const added = [
      { product: 'roll', pieces: 10, readyBy: '04:10' },
      { product: 'roll', pieces: 10, readyBy: '05:00' },
    ];
    const answer = await asked(morning, added);
    expect(answer.fits).toBe(true);
    expect(answer.added.map(({ number, readyBy }) => [number, readyBy])).toEqual([
      [2, '04:10'],
      [3, '05:00'],
    ]);
    // By 04:10 two trays more; by 05:00 six trays more than the five there are by then.
    expect(answer.most.map(({ mostPieces }) => mostPieces)).toEqual([20, 50]);
  });
});

describe('a day in trouble already', () => {
  const full: Scenario = { ...morning, orders: [{ product: 'bun', pieces: 70, readyBy: '04:10' }] };

  it('what is late stays late, and more fits beside it', { timeout: 60_000 }, async () => {
    const base = await planned(full, 60);
    expect(base.score.lateTrayMinutes).toBe(20);
    const answer = await asked(full, [{ product: 'roll', pieces: 10, readyBy: '06:00' }], { base });
    expect(answer.fits).toBe(true);
    expect(answer.base).toEqual(base);
    expect(answer.says).toMatch(/^It fits: 10 roll for 06:00, ready at .* What is late or left out without it stays so\.$/);
    expect(answer.cost.lateTrayMinutes).toBe(0);
  });

  it('nothing is said to be proved impossible that only is in a day without what fails', { timeout: 60_000 }, async () => {
    const answer = await asked(full, [{ product: 'roll', pieces: 10, readyBy: '03:20' }]);
    expect(answer).toMatchObject({ fits: false, isProved: false });
    expect(answer.most[0]?.limitPieces).toBeNull();
    expect(answer.readyTimes[0]?.isEarliest).toBe(false);
  });
});

describe('limits', () => {
  it('when the time is over, what was not reached is listed', async () => {
    const answer = await asked(
      morning,
      [{ product: 'roll', pieces: 30, readyBy: '04:10' }],
      {},
      askingFor({ untilMs: 0, now: () => 1 }),
    );
    expect(answer.notReached).toHaveLength(2);
    expect(answer.wouldFitIf?.changes).toEqual([]);
  });

  it('stopped, it answers with the plans it has', async () => {
    const answer = await asked(
      morning,
      [{ product: 'roll', pieces: 10, readyBy: '04:10' }],
      {},
      askingFor({ cancelled: () => true }),
    );
    expect(answer.base.holds).not.toBe('nothing');
    expect(answer.most).toEqual([]);
  });

  it('the same question has the same answer', async () => {
    const bare = (answer: unknown): string => JSON.stringify(answer).replace(/"seconds":[\d.]+/g, '');
    const added = [{ product: 'roll', pieces: 10, readyBy: '04:10' }];
    expect(bare(await asked(morning, added))).toBe(bare(await asked(morning, added)));
  });
});
