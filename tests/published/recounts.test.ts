// The recounts themselves: right on schedules worked out by hand or valued by others, and not fooled by spoiled ones.
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Schedule } from '../../src/solver/problem.ts';
import { ABSENT, instancesOf, isPresent } from './benchFolder.ts';
import { recountFlexible } from './flexibleCases.ts';
import { recountJobShop } from './jobShopCases.ts';
import { type OvenInstance, openSpans, ovenSchema, recountOvens, setupBefore } from './ovenCases.ts';
import { recountProject } from './projectCases.ts';
import { recountTardiness, tardinessSchema } from './tardinessCases.ts';

if (!isPresent) console.warn(`\n${ABSENT}\n`);

const scheduleOf = (start: number[], more: Partial<Schedule> = {}): Schedule => ({
  start,
  end: start,
  pools: [],
  chamber: [],
  moves: [],
  ...more,
});

describe('a job shop of two jobs on two machines, 3 and 2, then 2 and 4', () => {
  const jobs = [
    [
      [0, 3],
      [1, 2],
    ],
    [
      [0, 2],
      [1, 4],
    ],
  ] as const;
  const free = { kind: 'classic', operators: Number.POSITIVE_INFINITY } as const;
  const faultsOf = (start: number[], variant: Parameters<typeof recountJobShop>[1] = free) =>
    recountJobShop(jobs, variant, scheduleOf(start)).faults.join('; ');

  it('ends at 9 with the first job first, at 8 with the second', () => {
    expect(recountJobShop(jobs, free, scheduleOf([0, 3, 3, 5]))).toEqual({ faults: [], value: 9 });
    expect(recountJobShop(jobs, free, scheduleOf([2, 6, 0, 2]))).toEqual({ faults: [], value: 8 });
  });

  it.each([
    ['two on a machine', [0, 3, 2, 5], free, /machine 0: two/],
    ['too early', [0, 2, 3, 5], free, /job 0: operation 1 begins/],
    ['a wait where there is none', [2, 6, 0, 2], { ...free, kind: 'no-wait' }, /job 0: waits/],
    ['a machine kept', [0, 5, 3, 7], { ...free, kind: 'blocking' }, /machine 0: two/],
    ['hands for one', [0, 3, 3, 5], { ...free, operators: 1 }, /more than 1/],
  ] as const)('%s', (_, start, variant, says) => {
    expect(faultsOf([...start], variant)).toMatch(says);
  });
});

describe('one operation of 2 on machine 0 or 5 on machine 1, then one of 3 on machine 0', () => {
  const jobs = [[[[0, 2] as const, [1, 5] as const], [[0, 3] as const]]];
  const on = (first: number, start: number[]) => recountFlexible(2, jobs, scheduleOf(start, { pools: [[first], [0]] }));

  it('ends at 5 or at 8', () => {
    expect(on(0, [0, 2])).toEqual({ faults: [], value: 5 });
    expect(on(1, [0, 5])).toEqual({ faults: [], value: 8 });
  });

  it('on the slow machine it takes 5, and on none it is nowhere', () => {
    expect(on(1, [0, 2]).faults).toEqual(['job 0: operation 1 begins before the last ends']);
    expect(on(-1, [0, 5]).faults).toEqual(['job 0: operation 0 has no machine of its own']);
  });
});

describe('a project of two activities of 4 and 3 that need 2 of 3 each, the second at most 5 after the first', () => {
  const activity = (duration: number, need: number) => ({ duration, demands: [need] });
  const project = {
    capacities: [3],
    activities: [activity(0, 0), activity(4, 2), activity(3, 2), activity(0, 0)],
    lags: [
      [0, 1, 0],
      [0, 2, 0],
      [1, 2, 1],
      [2, 1, -5],
      [2, 3, 3],
    ] as const,
  };

  it('ends at 7', () => {
    expect(recountProject(project, scheduleOf([0, 0, 4, 7]))).toEqual({ faults: [], value: 7 });
  });

  it.each([
    ['both at once', [0, 0, 3, 6], 'resource 0 is above its capacity at 3'],
    ['the second too late', [0, 0, 6, 9], '1 begins less than -5 after 2'],
    ['a sink too early', [0, 0, 4, 6], '3 begins less than 3 after 2'],
  ] as const)('%s', (_, start, says) => {
    expect(recountProject(project, scheduleOf([...start])).faults).toEqual([says]);
  });
});

describe('three jobs on one machine', () => {
  const jobs = [
    { duration: 2, weight: 3, dueDate: 1 },
    { duration: 4, weight: 1, dueDate: 4 },
    { duration: 1, weight: 5, dueDate: 9 },
  ];

  it('in their order: 1 late by 1 at 3, 2 late by 2 at 1', () => {
    expect(recountTardiness(jobs, scheduleOf([0, 2, 6]))).toEqual({ faults: [], value: 5 });
  });

  it('two at once, and one nowhere', () => {
    expect(recountTardiness(jobs, scheduleOf([0, 1, 6])).faults).toEqual(['two jobs at 1']);
    expect(recountTardiness(jobs, scheduleOf([0, 2, -1])).faults).toEqual(['job 2 is not planned']);
  });
});

/** An oven of room 5, open from 2 to 30 and from 40 to 60, setups of 1 to the same family and of 3 to the other. */
const OVEN: OvenInstance = {
  horizon: 60,
  attributes: 2,
  setupTimes: [
    [1, 3],
    [3, 1],
  ],
  setupCosts: [
    [0, 7],
    [2, 0],
  ],
  machines: [
    {
      capacity: 5,
      initialAttribute: 0,
      availability: [
        [2, 30],
        [40, 60],
      ],
    },
  ],
  jobs: [
    { size: 3, attribute: 0, minTime: 6, maxTime: 9, earliestStart: 0, latestEnd: 9, machines: [0] },
    { size: 2, attribute: 0, minTime: 8, maxTime: 8, earliestStart: 3, latestEnd: 20, machines: [0] },
    { size: 2, attribute: 1, minTime: 5, maxTime: 9, earliestStart: 12, latestEnd: 19, machines: [0] },
  ],
  objectives: {
    uc1: { weights: { runtime: 2, tardyJobs: 10, setupCosts: 1 }, normalisation: 100 },
    uc2: { weights: { runtime: 1, tardyJobs: 0, setupCosts: 0 }, normalisation: 1 },
    uc3: { weights: { runtime: 0, tardyJobs: 0, setupCosts: 1 }, normalisation: 1 },
  },
};

type Batch = { readonly machine: number; readonly start: number; readonly duration: number; readonly jobs: readonly number[] };

function scheduleOfBatches(instance: OvenInstance, batches: readonly Batch[]): Schedule {
  const start = instance.jobs.map(() => -1);
  const end = instance.jobs.map(() => -1);
  const chamber = instance.jobs.map(() => -1);
  for (const batch of batches) {
    for (const j of batch.jobs) {
      start[j] = batch.start - setupBefore(instance, instance.jobs[j]?.attribute as number);
      end[j] = batch.start + batch.duration;
      chamber[j] = batch.machine;
    }
  }
  return scheduleOf(start, { end, chamber });
}

describe('an oven of two families', () => {
  const first = { machine: 0, start: 3, duration: 8, jobs: [0, 1] };
  const second = { machine: 0, start: 14, duration: 5, jobs: [2] };
  const faultsOf = (...batches: Batch[]) => recountOvens(OVEN, scheduleOfBatches(OVEN, batches)).faults.join('; ');

  it('8 and 5 of runtime, the first job late, one change of 7', () => {
    const { faults, details } = recountOvens(OVEN, scheduleOfBatches(OVEN, [first, second]));
    expect(faults).toEqual([]);
    expect(details).toEqual({ uc1: 0.43, uc2: 13, uc3: 7, runtime: 13, tardyJobs: 1, setupCosts: 7 });
  });

  it.each([
    ['no time for the setup', first, { ...second, start: 13 }, /at 13 on 0: no time for its setup/],
    ['while closed', first, { ...second, start: 41 }, /at 41 on 0: while it is closed/],
    ['too long', { ...first, duration: 9 }, { ...second, start: 20 }, /job 1 for 9/],
    ['two families in one', { ...first, jobs: [0] }, { ...first, start: 13, jobs: [1, 2] }, /two attributes/],
    ['too early', { ...first, start: 2, duration: 8 }, second, /job 1 comes later/],
  ] as const)('%s', (_, a, b, says) => {
    expect(faultsOf(a, b)).toMatch(says);
  });

  it('too full, and where it may not be', () => {
    const instance = { ...OVEN, jobs: OVEN.jobs.map((job, j) => (j === 0 ? { ...job, size: 4, machines: [1] } : job)) };
    const { faults } = recountOvens(instance, scheduleOfBatches(instance, [first, second]));
    expect(faults).toEqual(['batch at 3 on 0: too full', 'batch at 3 on 0: job 0 may not be there']);
  });

  it('spans that touch are one', () => {
    expect(
      openSpans([
        [3, 36],
        [36, 48],
        [49, 85],
      ]),
    ).toEqual([
      [3, 48],
      [49, 85],
    ]);
  });
});

function schedulesOthersValued(): void {
  const batch = z.object({ machine: z.number(), start: z.number(), duration: z.number(), jobs: z.array(z.number()) });
  const valued = z.object({ value: z.number(), batches: z.array(batch).optional() }).optional();
  const witnesses = z.object({ computedHere: z.object({ uc1: valued, uc2: valued, uc3: valued }).nullable() });

  it('oven instances: the value with each use case, and no fault', () => {
    let count = 0;
    for (const { name, data } of instancesOf('osp')) {
      const instance = ovenSchema.parse(data);
      const { computedHere } = witnesses.parse(data);
      for (const uc of ['uc1', 'uc2', 'uc3'] as const) {
        const witness = computedHere?.[uc];
        if (witness?.batches === undefined) continue;
        const { faults, details } = recountOvens(instance, scheduleOfBatches(instance, witness.batches));
        expect([name, uc, faults]).toEqual([name, uc, []]);
        expect((details?.[uc] as number) * instance.objectives[uc].normalisation).toBeCloseTo(witness.value, 4);
        count++;
      }
    }
    expect(count).toBeGreaterThanOrEqual(24);
  });

  it('weighted tardiness: the printed optimum, by an order that attains it', () => {
    const order = z.object({ computedHere: z.object({ order: z.array(z.number()) }) });
    for (const { name, data } of instancesOf('tardiness')) {
      const { jobs, published } = tardinessSchema.parse(data);
      const start = jobs.map(() => -1);
      let end = 0;
      for (const j of order.parse(data).computedHere.order) {
        start[j] = end;
        end += jobs[j]?.duration as number;
      }
      const recount = recountTardiness(jobs, scheduleOf(start));
      expect([name, recount]).toEqual([name, { faults: [], value: published.totalWeightedTardiness }]);
    }
  });
}

if (isPresent) describe('schedules others valued', schedulesOthersValued);
