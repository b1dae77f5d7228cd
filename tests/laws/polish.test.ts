// What a baker would point at in a plan is not there: a tray that waits although it could bake, a temperature change for
// nothing. On days drawn at random each such change is made to the plan and judged: none may be as good and break no rule.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { Plan, Task } from '../../src/model/plan.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';
import { anyScenario } from './anyScenario.ts';
import { planned } from './planned.ts';

/** The plan with some tasks moved so many minutes earlier, bare of what follows from times. */
function earlier(plan: Plan, moved: ReadonlySet<string>, by: number, kept: ReadonlyMap<string, number>): WrittenPlan {
  const tasks = plan.tasks.map(({ startsAt: _s, endsAt: _e, ...task }) => {
    const end = kept.get(task.id);
    if (end !== undefined) return { ...task, end };
    if (!moved.has(task.id)) return task;
    const handsOn = task.handsOn.map((hands) => ({ ...hands, start: hands.start - by, end: hands.end - by }));
    return { ...task, start: task.start - by, end: task.end - by, handsOn };
  });
  return { tasks, decks: plan.decks };
}

/** On every day drawn: no tray could bake earlier for nothing. Returns how many earlier bakes were tried. */
async function holdsOnDrawnDays(draws: { numRuns: number; seed?: number; path?: string }): Promise<number> {
  let tried = 0;
  await fc.assert(
    fc.asyncProperty(anyScenario, async (scenario) => {
      fc.pre(scenario.goals.aim === 'finish-early' && scenario.equipment.ovens.every((oven) => oven.loading === 'any-time'));
      const plan = await planned(scenario, 60);
      for (const bake of plan.tasks.filter((task) => task.step === 'bake')) {
        const chain = plan.tasks.filter((task) => task.tray === bake.tray).sort((a, b) => a.start - b.start);
        const before = chain[chain.indexOf(bake) - 1] as Task | undefined;
        if (before === undefined || before.step !== 'proof') continue;
        const moved = new Set(chain.slice(chain.indexOf(bake)).map((task) => task.id));
        for (const by of [1, 2, 5, 10, 20]) {
          if (before.end - by <= before.start) continue;
          tried++;
          const other = earlier(plan, moved, by, new Map([[before.id, before.end - by]]));
          const { breaches, figures } = judge(scenario, other);
          expect(breaches.length > 0 || figures.cost > plan.score.cost, `${bake.id} could bake ${by} minutes earlier`).toBe(true);
        }
      }
    }),
    draws,
  );
  return tried;
}

it('no deck stands hot and free while a tray that is ready for it waits', async () => {
  expect(await holdsOnDrawnDays({ numRuns: 60 })).toBeGreaterThan(200);
}, 240_000);

it('nor on a day where baking as early as can be costs a temperature change, and a little later none', async () => {
  expect(await holdsOnDrawnDays({ numRuns: 1, seed: 1914042898, path: '104' })).toBeGreaterThan(10);
}, 240_000);

it('no temperature change is for nothing', async () => {
  let tried = 0;
  await fc.assert(
    fc.asyncProperty(anyScenario, async (scenario) => {
      const plan = await planned(scenario, 60);
      plan.decks.forEach((deck, d) => {
        deck.setPoints.forEach((point, i) => {
          const rest = deck.setPoints
            .filter((_, k) => k !== i)
            .map((other, k) => (k === i ? { ...other, fromC: point.fromC } : other));
          const decks = plan.decks.map((other, k) => (k === d ? { ...other, setPoints: rest } : other));
          const { breaches } = judge(scenario, { tasks: plan.tasks.map(({ startsAt: _s, endsAt: _e, ...task }) => task), decks });
          tried++;
          expect(breaches.length, `${deck.id} need not move at ${point.start}`).toBeGreaterThan(0);
        });
      });
    }),
    { numRuns: 60 },
  );
  expect(tried).toBeGreaterThan(60);
}, 240_000);
