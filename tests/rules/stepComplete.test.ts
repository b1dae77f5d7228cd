// STEP_COMPLETE. A step missing, or one too many.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, spoiled, task } from './spoil.ts';

describe('STEP_COMPLETE', () => {
  it('sees a last step that is written as another', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      task(plan, 'milk-bun-2/finish').step = 'shape';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['STEP_COMPLETE']);
    expect(judge(marketMorning.scenario, other).breaches.map(({ says }) => says)).toEqual([
      'Tray milk-bun-2 has no finish (step 6 of 6).',
      'Tray milk-bun-2 has the shape milk-bun-2/finish more often than its steps ask for.',
    ]);
  });

  it('sees each step that is taken out', () => {
    for (const { id } of marketMorning.bare.tasks) {
      const without = { ...marketMorning.bare, tasks: marketMorning.bare.tasks.filter((one) => one.id !== id) };
      expect(codesSeen(marketMorning.scenario, without), `without ${id}`).toContain('STEP_COMPLETE');
    }
  });

  it('sees a task that names neither tray nor batch', () => {
    const other = edited(marketMorning.bare, (plan) => {
      plan.tasks.push({ step: 'bulk', start: 0, end: 5, handsOn: [] });
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['STEP_COMPLETE']);
  });
});
