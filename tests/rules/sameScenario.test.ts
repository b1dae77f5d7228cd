// SAME_SCENARIO. A plan states the fingerprint of another scenario.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, spoiled } from './spoil.ts';

describe('SAME_SCENARIO', () => {
  it('sees another fingerprint', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      if (plan.scenario !== undefined) plan.scenario.fingerprint = `sha256:${'0'.repeat(64)}`;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['SAME_SCENARIO']);
  });

  it('sees another date beside the right fingerprint', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      if (plan.scenario !== undefined) plan.scenario.date = '2026-05-17';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['SAME_SCENARIO']);
  });

  it('sees a scenario in which one goal is another', () => {
    const other = spoiled(marketMorning.scenario, (scenario) => {
      scenario.goals.leftOutTray = 4999;
    });
    expect(codesSeen(other, marketMorning.plan)).toEqual(['SAME_SCENARIO']);
  });
});
