// SCORE. Figures stated that the recount does not find.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, spoiled } from './spoil.ts';

describe('SCORE', () => {
  it('sees each figure that is one too many', () => {
    const names = [
      'cost',
      'lateTrayMinutes',
      'leftOutTrays',
      'finishMinute',
      'temperatureChanges',
      'firstHandsOnMinute',
    ] as const;
    for (const name of names) {
      const other = spoiled(marketMorning.plan, (plan) => {
        if (plan.score !== undefined) plan.score[name] = (plan.score[name] ?? 0) + 1;
      });
      expect(codesSeen(marketMorning.scenario, other), name).toEqual(['SCORE']);
    }
  });

  it('sees a lower bound above the cost, and lets one that equals it be', () => {
    const bound = (lowerBound: number) => ({ ...marketMorning.bare, score: { lowerBound } });
    expect(codesSeen(marketMorning.scenario, bound(351))).toEqual([]);
    expect(codesSeen(marketMorning.scenario, bound(351.00001))).toEqual(['SCORE']);
  });

  it('sees a gap that is not (cost - lowerBound) / cost', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      if (plan.score !== undefined) plan.score.gap = 0.15;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['SCORE']);
  });

  it('sees a word for what the plan holds that is not so', () => {
    const holding = (holds: 'optimal' | 'feasible' | 'partial' | 'nothing') => ({ ...marketMorning.plan, holds });
    expect(codesSeen(marketMorning.scenario, holding('feasible'))).toEqual([]);
    for (const holds of ['optimal', 'partial', 'nothing'] as const) {
      expect(codesSeen(marketMorning.scenario, holding(holds)), holds).toEqual(['SCORE']);
    }
  });
});
