// What would make trays fit, on days of which it is known by arithmetic, and by law: every change offered does what it says.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wouldFitSchema } from '../../../src/model/wouldFit.ts';
import { makePlan } from '../../../src/planning.ts';
import { troubleByProduct, whatWouldFit } from '../../../src/questions/whatWouldFit.ts';
import { askingFor } from '../askingFor.ts';
import { anyTinyDay, scenarioOf } from '../capacity/tinyDays.ts';
import { PLANTED } from '../clashDays.ts';
import { actedOn, patching } from './actedOn.ts';

const now = (): number => performance.now();

async function asked(scenario: (typeof PLANTED)[number]['scenario'], asking = askingFor({ now })) {
  const plan = await makePlan(scenario, { seed: 1, now, version: 'test' });
  const answers = await whatWouldFit({ scenario, plan, patch: patching }, asking);
  for (const answer of answers) wouldFitSchema.parse(answer);
  const says = answers.flatMap(({ changes, notOffered }) => [
    ...changes.map((change) => `${change.kind} ${change.amount}${change.isSmallest ? ' proved' : ''}`),
    ...notOffered.map(({ kind, because }) => `${kind} ${because}`),
  ]);
  return { plan, answers, says };
}

function plantedDay(name: string) {
  const day = PLANTED.find((one) => one.name === name);
  if (day === undefined) throw new Error(`no planted day ${name}`);
  return day.scenario;
}

// The arithmetic of each day stands beside it, in clashDays.ts.
describe('days of which the answer is known', () => {
  it.each([
    [
      'too many trays for the shelves by a time',
      ['more-shelves 1 proved', 'drop-pieces 10 proved', 'deck-place proved', 'move-order proved', 'another-person of-no-use'],
    ],
    ['the heat of a deck between two products', ['start-earlier 10 proved', 'move-order 10 proved', 'deck-place proved']],
    ['the hours of the only person', ['start-earlier 5 proved', 'another-person 20', 'move-order 5 proved']],
    ['over-proofing before one deck', ['deck-place 1 proved', 'drop-pieces 10 proved', 'more-shelves proved']],
  ])('%s', { timeout: 60_000 }, async (name, expected) => {
    const scenario = plantedDay(name);
    const { plan, answers, says } = await asked(scenario);
    expect(answers).toHaveLength(1);
    expect(says).toEqual(expect.arrayContaining(expected));
    expect(says).toHaveLength(6);
    for (const answer of answers)
      for (const change of answer.changes) expect(await actedOn(scenario, plan, answer, change)).toEqual([]);
  });
});

describe('days drawn at random that cannot all be done', () => {
  // Fifty larger ones are run by hand: see run.ts.
  it('every change offered does what it says', { timeout: 120_000 }, async () => {
    const kinds = new Set<string>();
    const drawn = fc.sample(anyTinyDay, { numRuns: 40, seed: 11 }).map(scenarioOf);
    let days = 0;
    for (const scenario of drawn) {
      const quick = await makePlan(scenario, { effort: 60, now, version: 'test' });
      if (quick.score.lateTrayMinutes + quick.score.leftOutTrays === 0) continue;
      const { plan, answers } = await asked(scenario);
      expect(answers).toHaveLength(troubleByProduct(scenario, plan).length);
      for (const answer of answers) {
        for (const change of answer.changes) {
          expect(await actedOn(scenario, plan, answer, change)).toEqual([]);
          kinds.add(change.kind);
        }
      }
      days++;
      if (days === 6) break;
    }
    expect(days).toBe(6);
    expect(kinds.size).toBeGreaterThanOrEqual(3);
  });
});

describe('limits', () => {
  const scenario = plantedDay('the hours of the only person');

  it('without time nothing is offered, and that is said of every kind', async () => {
    const { says } = await asked(scenario, askingFor({ untilMs: 0, now: () => 1 }));
    expect(says.filter((text) => text.endsWith('no-time'))).toHaveLength(3);
    expect(says.filter((text) => text.endsWith('of-no-use'))).toHaveLength(3);
  });

  it('stopped, it ends with what it has', async () => {
    const { answers } = await asked(scenario, askingFor({ cancelled: () => true }));
    expect(answers[0]?.changes).toEqual([]);
    expect(answers[0]?.says).toBe('There was no time to find out what would have 10 bun for 05:15 ready on time.');
  });

  it('a day with nothing in trouble has no answer', async () => {
    const easy = { ...scenario, orders: scenario.orders.slice(1) };
    expect((await asked(easy)).answers).toEqual([]);
  });

  it('the same question has the same answer', async () => {
    const [first, second] = [await asked(scenario, askingFor()), await asked(scenario, askingFor())];
    const bare = (answers: unknown): string => JSON.stringify(answers).replace(/"seconds":[\d.]+/g, '');
    expect(bare(second.answers)).toBe(bare(first.answers));
  });
});
