import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../src/model/scenario.ts';
import { scenarioNamed } from './allScenarios.ts';

// Constructed; proof in the test: all 24 orders of work are tried. With one machine a stage and no waiting no dough can
// overtake another, so an order of work fixes every start.

type Job = { readonly id: string; readonly minutes: readonly number[] };

/** Minutes of each product on bowl, shelf and deck, as the scenario has them. */
function jobsOf(scenario: Scenario): readonly Job[] {
  return scenario.products.map((product) => {
    const dough = scenario.doughs.find((each) => each.id === product.dough);
    const steps = [...(dough?.steps ?? []), ...product.steps];
    const minutes = steps.map((step) => ('minutes' in step && typeof step.minutes === 'number' ? step.minutes : Number.NaN));
    return { id: product.id, minutes };
  });
}

function permutations<T>(list: readonly T[]): readonly (readonly T[])[] {
  if (list.length === 0) return [[]];
  return list.flatMap((first, index) => permutations(list.toSpliced(index, 1)).map((rest) => [first, ...rest]));
}

/** Starts of an order of work, each as early as every machine allows, and the makespan. */
function timesOf(order: readonly Job[]): { starts: readonly number[]; makespan: number } {
  const freeAt = [0, 0, 0];
  const starts = order.map(({ minutes }) => {
    const offsets = minutes.map((_, stage) => minutes.slice(0, stage).reduce((sum, each) => sum + each, 0));
    const start = Math.max(...offsets.map((offset, stage) => (freeAt[stage] ?? 0) - offset));
    offsets.forEach((offset, stage) => {
      freeAt[stage] = start + offset + (minutes[stage] ?? Number.NaN);
    });
    return start;
  });
  return { starts, makespan: Math.max(...freeAt) };
}

describe('no-wait-four-doughs', () => {
  const scenario = scenarioNamed('no-wait-four-doughs');
  const jobs = jobsOf(scenario);
  const tried = permutations(jobs).map((order) => ({ name: order.map((job) => job.id).join(''), ...timesOf(order) }));

  it('has one bowl, one shelf, one place in a hot oven, nobody, and a price of minutes only', () => {
    expect(scenario.equipment.mixers).toHaveLength(1);
    expect(scenario.equipment.proofers.map((each) => each.shelves * each.traysPerShelf)).toEqual([1]);
    expect(scenario.equipment.ovens.flatMap((oven) => oven.decks.map((deck) => [deck.trays, deck.startsAtC]))).toEqual([
      [1, 200],
    ]);
    expect(scenario.people).toBeUndefined();
    expect(scenario.goals).toMatchObject({ finishMinute: 1, temperatureChange: 0, aim: 'finish-early' });
    expect(jobs.map((job) => job.minutes)).toEqual([
      [10, 60, 25],
      [15, 45, 20],
      [10, 30, 35],
      [20, 40, 15],
    ]);
  });

  it('is ready after 200 minutes at best and 230 at worst', () => {
    expect(tried).toHaveLength(24);
    expect(Math.min(...tried.map((each) => each.makespan))).toBe(200);
    expect(Math.max(...tried.map((each) => each.makespan))).toBe(230);
    const best = tried.filter((each) => each.makespan === 200).map((each) => each.name);
    expect(best.sort()).toEqual(['abcd', 'acbd', 'cabd', 'cbad']);
    expect(tried.find((each) => each.name === 'dbac')?.makespan).toBe(230);
  });

  it('starts A 0, B 55, C 105, D 125 in the order ABCD', () => {
    expect(tried.find((each) => each.name === 'abcd')?.starts).toEqual([0, 55, 105, 125]);
  });

  it('cannot be ready sooner: the shelf is busy 175 minutes, begins at 10 and leaves 15 to bake', () => {
    const shelfMinutes = jobs.reduce((sum, job) => sum + (job.minutes[1] ?? Number.NaN), 0);
    const soonest = Math.min(...jobs.map((job) => job.minutes[0] ?? Number.NaN));
    const shortestBake = Math.min(...jobs.map((job) => job.minutes[2] ?? Number.NaN));
    expect([soonest, shelfMinutes, shortestBake]).toEqual([10, 175, 15]);
    expect(soonest + shelfMinutes + shortestBake).toBe(200);
  });
});
