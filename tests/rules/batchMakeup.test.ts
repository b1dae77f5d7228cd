// BATCH_MAKEUP. Trays in the wrong batch, batches too heavy, batches stated otherwise.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { dayUnderway } from './plans/dayUnderway.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, nth, spoiled, task } from './spoil.ts';

describe('BATCH_MAKEUP', () => {
  it("sees a weight stated that is not the batch's", () => {
    const stating = (kg: number) =>
      edited(marketMorning.plan, (plan) => {
        nth(plan.batches, 1).kg = kg;
      });
    expect(codesSeen(marketMorning.scenario, stating(2.4004))).toEqual([]);
    expect(codesSeen(marketMorning.scenario, stating(2.5))).toEqual(['BATCH_MAKEUP']);
  });

  it('sees a batch heavier than the largest, and lets one exactly as heavy pass', () => {
    const largest = (kg: number) =>
      edited(marketMorning.scenario, (scenario) => {
        nth(scenario.doughs, 1).maxBatchKg = kg;
      });
    expect(codesSeen(largest(2.4), marketMorning.bare)).toEqual([]);
    expect(codesSeen(largest(2.399), marketMorning.bare)).toEqual(['BATCH_MAKEUP']);
  });

  it('counts the loss into the weight', () => {
    const flat = (kg: number) =>
      edited(quietHouse.scenario, (scenario) => {
        nth(scenario.doughs, 1).maxBatchKg = kg;
      });
    // 8 pieces of 100 g are 0.8 kg on the tray; with 20 percent lost, 1 kg is mixed.
    expect(codesSeen(flat(1), quietHouse.plan)).toEqual([]);
    expect(codesSeen(flat(0.999), quietHouse.plan)).toEqual(['BATCH_MAKEUP']);
  });

  it('sees a tray in two batches', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      task(plan, 'milk-bun-2/bake').batch = 'country-1';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['BATCH_MAKEUP']);
  });

  it('sees a tray in a batch of another dough', () => {
    const other = edited(marketMorning.plan, (plan) => {
      for (const one of plan.tasks) if (one.tray === 'milk-bun-2') one.batch = 'country-1';
    });
    const says = judge(marketMorning.scenario, other).breaches.map((breach) => breach.says);
    expect(says).toContain('Tray milk-bun-2 is of dough milk, its batch country-1 of dough country.');
  });

  it('sees a batch of which no tray is made', () => {
    const other = edited(marketMorning.bare, (plan) => {
      plan.tasks.push({ step: 'mix', batch: 'country-2', start: 200, end: 210, handsOn: [] });
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['BATCH_MAKEUP']);
  });

  it('sees a tray listed in a batch it is not in', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      nth(nth(plan.batches, 1).trays, 1).id = 'milk-bun-3';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['BATCH_MAKEUP']);
  });

  it('counts bowls only for a dough that is mixed', () => {
    const smallBowls = edited(quietHouse.scenario, (scenario) => {
      for (const mixer of scenario.equipment.mixers ?? []) mixer.bowlKg = 1;
    });
    expect(codesSeen(smallBowls, quietHouse.plan)).toEqual(['BATCH_MAKEUP', 'BOWL_SIZE']);
    const unmixed = edited(smallBowls, (scenario) => {
      nth(scenario.doughs, 0).steps.shift();
    });
    const plan = { ...quietHouse.plan, tasks: quietHouse.plan.tasks.filter(({ id }) => id !== 'roll-dough-1/mix') };
    expect(codesSeen(unmixed, plan)).toEqual([]);
  });

  describe('of a day under way', () => {
    const at60 = dayUnderway(marketMorning.scenario, marketMorning.bare, 60);

    it('sees a tray that was dealt to another batch, or of another product', () => {
      const swapped = edited(at60, (scenario) => {
        const [one, other] = [nth(scenario.underway.batches, 0), nth(scenario.underway.batches, 1)];
        one.trays.push(nth(other.trays, 1));
        other.trays.splice(1, 1);
      });
      expect(codesSeen(swapped, marketMorning.bare)).toEqual(['BATCH_MAKEUP']);
      expect(judge(swapped, marketMorning.bare).breaches[0]?.says).toBe(
        'Tray milk-bun-2 is of batch country-1; the plan puts it in batch milk-1.',
      );
      const other = spoiled(at60, (scenario) => {
        nth(nth(scenario.underway.batches, 1).trays, 1).product = 'field-loaf';
      });
      expect(codesSeen(other, marketMorning.bare)).toEqual(['BATCH_MAKEUP']);
    });

    it('sees a batch of another dough', () => {
      const other = spoiled(at60, (scenario) => {
        nth(scenario.underway.batches, 1).dough = 'country';
      });
      expect(codesSeen(other, marketMorning.bare)).toEqual(['BATCH_MAKEUP']);
      expect(judge(other, marketMorning.bare).breaches[0]?.says).toBe('Batch milk-1 is of dough milk; it was dealt as country.');
    });

    it('lets a new tray into a batch that has not begun, and into no other', () => {
      const unknown = (now: number) =>
        edited(dayUnderway(marketMorning.scenario, marketMorning.bare, now), (scenario) => {
          nth(scenario.underway.batches, 1).trays.pop();
          scenario.underway.tasks = scenario.underway.tasks.filter(({ tray }) => tray !== 'milk-bun-2');
        });
      expect(codesSeen(unknown(67), marketMorning.bare)).toEqual([]);
      expect(codesSeen(unknown(68), marketMorning.bare)).toEqual(['BATCH_MAKEUP']);
      expect(judge(unknown(68), marketMorning.bare).breaches[0]?.says).toBe(
        'Tray milk-bun-2 is put in batch milk-1, which has begun without it.',
      );
    });
  });
});
