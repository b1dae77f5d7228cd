// One machine, jobs with due dates and weights, least total weighted tardiness (the OR-Library's wt40).
import { z } from 'zod';
import type { Schedule, ShopProblem } from '../../src/solver/problem.ts';
import { EMPTY, mandatory, whole } from '../solver/shops.ts';
import { instancesOf } from './benchFolder.ts';
import { overloadedAt, type PublishedCase, type Recount } from './publishedCase.ts';

const jobSchema = z.object({ duration: z.number(), weight: z.number(), dueDate: z.number() });
export const tardinessSchema = z.object({
  jobs: z.array(jobSchema),
  published: z.object({ totalWeightedTardiness: z.number() }),
});

export type WeightedJob = z.infer<typeof jobSchema>;

/** Each job a family of its own, for only units of one family share due dates. */
export function tardinessProblem(jobs: readonly WeightedJob[]): ShopProblem {
  const horizon = jobs.reduce((sum, { duration }) => sum + duration, 0);
  return {
    ...EMPTY,
    horizon,
    pools: [{ id: 'machine', capacity: 1, open: [[0, horizon]] }],
    tasks: jobs.map(({ duration }, j) => ({
      id: `job ${j}`,
      minDuration: duration,
      maxDuration: duration,
      earliestStart: 0,
      latestEnd: horizon,
      demands: [whole([0])],
    })),
    units: jobs.map((_, j) => mandatory(`job ${j}`, j, j)),
    families: jobs.map(({ dueDate, weight }) => ({ dues: [dueDate], latePrice: weight })),
    prices: { makespan: 0, stateChange: 0, fromFirstMark: false },
  };
}

export function recountTardiness(jobs: readonly WeightedJob[], schedule: Schedule): Recount {
  const uses = jobs.map(({ duration }, j) => {
    const from = schedule.start[j] as number;
    return { from, until: from + duration, amount: 1 };
  });
  const at = overloadedAt(uses, 1);
  const faults = at === undefined ? [] : [`two jobs at ${at}`];
  uses.forEach(({ from }, j) => {
    if (from < 0) faults.push(`job ${j} is not planned`);
  });
  const value = jobs.reduce(
    (sum, { weight, dueDate }, j) => sum + weight * Math.max(0, (uses[j] as { until: number }).until - dueDate),
    0,
  );
  return { faults, value };
}

export function tardinessCases(): PublishedCase[] {
  return instancesOf('tardiness').map(({ name, data }) => {
    const { jobs, published } = tardinessSchema.parse(data);
    return {
      folder: 'tardiness',
      name,
      problem: tardinessProblem(jobs),
      recount: (schedule) => recountTardiness(jobs, schedule),
      published: { best: published.totalWeightedTardiness, isFeasible: true, isRead: true },
      priceShift: 0,
    };
  });
}
