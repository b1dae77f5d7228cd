// `plan --how-sure` and `plan --careful` around parts that answer at once: what is printed, which files, what is handed on.
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { inkFor } from '../../src/cli/ink.ts';
import type { Parts } from '../../src/cli/parts.ts';
import { run } from '../../src/cli/run.ts';
import { sayHowSure } from '../../src/cli/sayHowSure.ts';
import type { Surroundings } from '../../src/cli/surroundings.ts';
import { howSurePlanSchema } from '../../src/model/howSurePlan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { CAREFUL_NOTE } from '../../src/questions/howSure/careful.ts';
import type { HowSureOptions } from '../../src/questions/howSure/howSure.ts';
import { partsFor, smallestScenario, surroundingsFor } from './fakes.ts';
import { sampleHowSure } from './sampleHowSure.ts';
import { finePlan } from './samplePlan.ts';

let folder: string;
let day: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'how-sure-'));
  day = join(folder, 'day.yaml');
  writeFileSync(day, 'a day');
});
afterEach(() => rmSync(folder, { recursive: true }));

async function plan(words: readonly string[], parts: Partial<Parts> = {}, around: Partial<Surroundings> = {}) {
  const surroundings = surroundingsFor(around);
  const code = await run(['plan', day, ...words], async () => partsFor(parts), surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

test('said aloud', () => {
  expect(sayHowSure(sampleHowSure, finePlan, inkFor(false))).toEqual([
    'Everything is ready on time in 62 of 100 mornings: between 61 and 63, going by 10,000 simulated (seed 1).',
    'On time    Due    Half of mornings by  9 in 10 by  Order',
    '62 of 100  05:30  05:21                05:38       24 Seed roll',
    '0 of 100   07:00  -                    -           6 Tin loaf',
    'Trays at risk, in mornings out of 100:',
    '  roll-1: late in 38 of 100, by 11 min on average; its dough stands too long in 12 of 100, by 7 min on average',
    'Ida: at work after hours in 7 of 100, by 4 min on average.',
    'Trays are late by 9.8 min in all on an average morning, 0 min when every step keeps its minutes.',
    'Proofing hurts most, above all that of Seed roll: if it always kept its minutes, lateness would be 5.7 min less.',
    expect.stringMatching(/^Assumed: .* mix 5 %, bake 5 %, load 25 %, unload 25 %\. Time a few mornings and state your own\.$/),
  ]);
});

test('when nothing is at risk, that is said', () => {
  const sure = { ...sampleHowSure, traysAtRisk: [], pastHours: [], hurts: [], hurtsMost: null, lateTrayMinutes: 0 };
  const lines = sayHowSure({ ...sure, allOnTime: { chance: 0.9999, low: 0.9994, high: 1 } }, finePlan, inkFor(false));
  expect(lines[0]).toContain('in over 99 of 100 mornings: between over 99 and 100');
  expect(lines).toContain('No tray is at risk: none is late, or stands or bakes too long, in more than 5 of 100 mornings.');
  expect(lines).toContain('Lateness on an average morning: less than 0.1 min over all trays.');
  expect(lines.join('\n')).not.toContain('hurts');
});

test('a long list names the orders least sure, and counts the rest', () => {
  const [order] = sampleHowSure.orders;
  if (order === undefined) throw new Error('an order');
  const orders = Array.from({ length: 20 }, (_, index) => ({
    ...order,
    pieces: index + 1,
    onTime: { chance: index / 20, low: 0, high: 1 },
  }));
  const text = sayHowSure({ ...sampleHowSure, orders }, finePlan, inkFor(false)).join('\n');
  expect(text).toContain('  1 Seed roll');
  expect(text).not.toContain('  20 Seed roll');
  expect(text).toContain('and 4 more orders, on time in 80 of 100 or more');
});

describe('--how-sure', () => {
  test('adds to the summary; without it nothing is simulated', async () => {
    let asked = 0;
    const howSure = async () => {
      asked += 1;
      return sampleHowSure;
    };
    const plain = await plan([], { howSure });
    expect([asked, plain.out.includes('How sure')]).toEqual([0, false]);
    const { code, out } = await plan(['--how-sure'], { howSure });
    expect([code, asked]).toEqual([0, 1]);
    expect(out).toContain('\nHow sure\nEverything is ready on time in 62 of 100 mornings');
  });

  test('with --json: plan and answer side by side, the plan as it is printed alone', async () => {
    const alone = await plan(['--json']);
    const { out } = await plan(['--how-sure', '--json']);
    const printed = howSurePlanSchema.parse(JSON.parse(out));
    expect(printed).toEqual({ plan: JSON.parse(alone.out), howSure: sampleHowSure });
  });

  test('with --out: a file of its own, which a later plan does not leave beside itself', async () => {
    const out = join(folder, 'out');
    await plan(['--how-sure', '--out', out]);
    expect(JSON.parse(readFileSync(join(out, 'how-sure.json'), 'utf8'))).toEqual(sampleHowSure);
    expect(JSON.parse(readFileSync(join(out, 'plan.json'), 'utf8'))).toEqual(finePlan);
    await plan(['--out', out]);
    expect(readdirSync(out).sort()).toEqual(['plan.json', 'sheet.svg']);
  });

  test('the mornings take the seed of the plan, and the clock only where a limit is set', async () => {
    const seen: HowSureOptions[] = [];
    const howSure: Parts['howSure'] = async (_, __, options) => {
      seen.push(options);
      return sampleHowSure;
    };
    let now = 0;
    await plan(['--how-sure'], { howSure }, { now: () => now });
    await plan(['--how-sure', '--seconds', '2'], { howSure }, { now: () => now });
    now = 1900;
    expect(seen.map(({ seed, isOver }) => [seed, isOver?.()])).toEqual([
      [1, false],
      [1, false],
    ]);
    now = 2000;
    expect(seen.map(({ isOver }) => isOver?.())).toEqual([false, true]);
  });

  test('of a time limit the search leaves a quarter, at most one and a half seconds', async () => {
    const given: (number | undefined)[] = [];
    const makePlan: Parts['makePlan'] = async (_, { seconds }) => {
      given.push(seconds);
      return finePlan;
    };
    for (const seconds of ['2', '60']) await plan(['--how-sure', '--seconds', seconds], { makePlan });
    await plan(['--seconds', '60'], { makePlan });
    expect(given).toEqual([1.5, 58.5, 60]);
  });
});

describe('--careful', () => {
  const slow: Scenario = { ...smallestScenario, name: 'A slow morning' };

  test('plans the careful scenario, says so, and asks how sure the plan is of the scenario as it was read', async () => {
    const [planned, asked]: [Scenario[], Scenario[]] = [[], []];
    const { out } = await plan(['--careful', '--how-sure'], {
      carefulScenario: () => slow,
      makePlan: async (scenario) => {
        planned.push(scenario);
        return finePlan;
      },
      howSure: async (scenario, { solver }) => {
        asked.push(scenario);
        expect(solver.notes).toContain(CAREFUL_NOTE);
        return sampleHowSure;
      },
    });
    expect([planned, asked]).toEqual([[slow], [smallestScenario]]);
    expect(out).toContain(CAREFUL_NOTE);
  });

  test('writes the careful scenario beside the plan, and prints both with --json', async () => {
    const { out } = await plan(['--careful', '--json', '--out', join(folder, 'out')], { carefulScenario: () => slow });
    const written: unknown = JSON.parse(readFileSync(join(folder, 'out/careful-scenario.json'), 'utf8'));
    expect(written).toEqual(slow);
    expect(howSurePlanSchema.parse(JSON.parse(out))).toMatchObject({ careful: slow, plan: { scenario: finePlan.scenario } });
  });

  test('a plan to start from is judged by the careful scenario', async () => {
    const judged: Scenario[] = [];
    const from = join(folder, 'from.json');
    writeFileSync(from, 'a plan');
    const { judge } = partsFor();
    await plan(['--careful', '--from', from], {
      carefulScenario: () => slow,
      judge: (scenario, written) => {
        judged.push(scenario);
        return judge(scenario, written);
      },
    });
    expect(judged).toEqual([slow]);
  });

  test('is refused for a day under way, before any planning', async () => {
    const underway = { now: 10, movePrice: 2, batches: [], tasks: [], decks: [], out: [] };
    const readScenario: Parts['readScenario'] = () => ({ ok: true, value: { ...smallestScenario, underway } });
    const { code, err } = await plan(['--careful', '--out', join(folder, 'out')], { readScenario });
    expect(code).toBe(2);
    expect(err).toContain('DAY_UNDER_WAY');
    expect(existsSync(join(folder, 'out'))).toBe(false);
  });
});
