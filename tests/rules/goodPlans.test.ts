// The hand-made good plans: no breach, and the figures worked out on paper in each file.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as coldNight from './plans/coldNight.ts';
import * as fourJobs from './plans/fourJobs.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import * as rackMorning from './plans/rackMorning.ts';

describe('plans written by hand', () => {
  it('market morning, everything stated', () => {
    const { breaches, figures } = judge(marketMorning.scenario, marketMorning.plan);
    expect(breaches).toEqual([]);
    expect(figures).toEqual({
      cost: 351,
      lateTrayMinutes: 8,
      leftOutTrays: 0,
      finishMinute: 181,
      temperatureChanges: 1,
      firstHandsOnMinute: 0,
      orders: marketMorning.plan.orders,
    });
  });

  it('market morning, only tasks and set points stated', () => {
    const whole = judge(marketMorning.scenario, marketMorning.plan);
    expect(judge(marketMorning.scenario, marketMorning.bare)).toEqual(whole);
  });

  it('quiet house, nobody named', () => {
    const { breaches, figures } = judge(quietHouse.scenario, quietHouse.plan);
    expect(breaches).toEqual([]);
    expect(figures).toMatchObject({
      cost: 76,
      finishMinute: 76,
      firstHandsOnMinute: 0,
      temperatureChanges: 0,
      lateTrayMinutes: 0,
    });
  });

  it('rack morning, loaded together, start-late', () => {
    const { breaches, figures } = judge(rackMorning.scenario, rackMorning.plan);
    expect(breaches).toEqual([]);
    expect(figures).toMatchObject({ cost: 75, finishMinute: 80, firstHandsOnMinute: 5, lateTrayMinutes: 0 });
  });

  it('cold night, the night the clocks go forward', () => {
    const { breaches, figures } = judge(coldNight.scenario, coldNight.plan);
    expect(breaches).toEqual([]);
    expect(figures).toMatchObject({ cost: 734, finishMinute: 654, lateTrayMinutes: 4, firstHandsOnMinute: 0 });
    expect(figures.orders).toEqual([
      {
        product: 'night-loaf',
        pieces: 6,
        readyBy: '2026-03-29T07:50:00+01:00',
        readyAt: '2026-03-29T07:54:00+01:00',
        lateMinutes: 4,
      },
    ]);
  });

  it('four jobs without waiting, makespan 200', () => {
    const { breaches, figures } = judge(fourJobs.scenario, fourJobs.plan);
    expect(breaches).toEqual([]);
    expect(figures).toMatchObject({ cost: 200, finishMinute: 200 });
  });
});
