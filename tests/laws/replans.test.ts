// Re-planning after an upset: the judge approves, what has begun stays, and nothing told means nothing changed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generateScenario } from '../../benchmarks/scenarios/generateScenario.ts';
import { KINDS } from '../../benchmarks/scenarios/kinds.ts';
import { upsetOf } from '../../benchmarks/scenarios/upsetOf.ts';
import { judge } from '../../src/check/judge.ts';
import type { InputError } from '../../src/model/inputError.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { ReplanAnswer } from '../../src/model/replanAnswer.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { replan } from '../../src/questions/replan.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import { askingFor } from '../questions/askingFor.ts';
import { scenarioFrom } from './anyScenario.ts';
import { planned } from './planned.ts';

function faultsOf(scenario: Scenario): readonly InputError[] {
  const reading = readScenarioValue(JSON.parse(JSON.stringify(scenario)));
  return reading.ok ? [] : reading.errors;
}

/** The re-plan after an upset of a day; null when the draw found none, or one that cannot be. */
async function replanned(scenario: Scenario, plan: Plan, seed: number): Promise<ReplanAnswer | null> {
  const { now, happened } = upsetOf(scenario, plan, seed);
  if (happened.happened.length === 0) return null;
  const outcome = await replan(scenario, plan, { now, happened, faultsOf }, askingFor(), { effort: 30 });
  return outcome.ok ? outcome.answer : null;
}

/** What had begun by now, as the scenario under way tells it, is in the plan as it was. */
function expectBegunToStay({ plan, scenario }: ReplanAnswer): void {
  const planned = new Set(plan.tasks.map((task) => task.tray ?? task.batch));
  for (const { state, step, ordinal, batch, tray, start, place } of scenario.underway?.tasks ?? []) {
    if (state === 'planned' || !planned.has(tray ?? batch)) continue;
    const mine = plan.tasks.filter((task) => task.step === step && task.batch === batch && task.tray === tray);
    const task = mine.sort((a, b) => a.start - b.start)[ordinal - 1];
    expect(task?.start).toBe(start);
    expect(task?.place).toEqual(place);
  }
}

describe('a day planned anew after an upset', () => {
  for (const [name, scenarioOf] of [
    [
      'of generated mornings',
      (seed: number) =>
        generateScenario({ kind: KINDS[seed % KINDS.length] ?? 'plain', trays: 8 + (seed % 9), seed: seed % 1000 }),
    ],
    ['of any scenario', scenarioFrom],
  ] as const) {
    it(name, { timeout: 120_000 }, async () => {
      let upsets = 0;
      await fc.assert(
        fc.asyncProperty(fc.noBias(fc.integer({ min: 0, max: 0x7fffffff })), async (seed) => {
          const scenario = scenarioOf(seed);
          const plan = await planned(scenario, 30);
          const answer = plan.tasks.length === 0 ? null : await replanned(scenario, plan, seed);
          if (answer === null) return;
          upsets++;
          expect(judge(answer.scenario, answer.plan).breaches).toEqual([]);
          expect(faultsOf(answer.scenario)).toEqual([]);
          expectBegunToStay(answer);
          expect(answer.movesCost).toBe(answer.movedTasks * answer.movePrice);
          expect(answer.plan.score.movedTasks).toBe(answer.movedTasks);
        }),
        { numRuns: 14 },
      );
      expect(upsets).toBeGreaterThan(5);
    });
  }

  it('nothing told: the plan comes back as it is', async () => {
    const scenario = scenarioFrom(5);
    const plan = await planned(scenario, 30);
    const told = { happened: [], keep: [] };
    const outcome = await replan(scenario, plan, { now: 60, happened: told, faultsOf }, askingFor());
    expect(outcome.ok && outcome.answer.isUnchanged).toBe(true);
    expect(outcome.ok && JSON.stringify(outcome.answer.plan)).toBe(JSON.stringify(plan));
  });

  it('all of it decided: the same times, places and people, at once', async () => {
    const scenario = generateScenario({ kind: 'plain', trays: 10, seed: 3 });
    const plan = await planned(scenario, 60);
    const keep = plan.batches.map(({ id }) => ({ batch: id, keeps: ['time' as const, 'place' as const, 'people' as const] }));
    const now = Math.floor(plan.score.finishMinute / 2);
    const outcome = await replan(scenario, plan, { now, happened: { happened: [], keep }, faultsOf }, askingFor());
    expect(outcome.ok).toBe(true);
    if (!outcome.ok) return;
    const { answer } = outcome;
    expect(answer.movedTasks).toBe(0);
    expect(answer.plan.solver.effort).toBeLessThanOrEqual(1);
    const placed = (one: Plan) => one.tasks.map(({ id, start, place, handsOn }) => [id, start, place?.id, handsOn]);
    expect(placed(answer.plan)).toEqual(placed(plan));
  });
});
