// Flexible job shops: each operation on one of several machines, and how long it takes depends on which.
import { z } from 'zod';
import type { Link, Schedule, ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { EMPTY, mandatory, whole } from '../solver/shops.ts';
import { instancesOf } from './benchFolder.ts';
import { overloadedAt, type PublishedCase, type Recount } from './publishedCase.ts';

const valueSchema = z.object({ optimum: z.number().nullable(), upperBound: z.number().optional() });
const schema = z.object({
  machines: z.number(),
  jobs: z.array(z.array(z.array(z.tuple([z.number(), z.number()])))),
  published: z.object({ makespan: valueSchema }),
});

type Alternative = readonly [machine: number, duration: number];
export type FlexibleJobs = readonly (readonly (readonly Alternative[])[])[];

const longestOf = (alternatives: readonly Alternative[]): number => Math.max(...alternatives.map(([, duration]) => duration));
const shortestOf = (alternatives: readonly Alternative[]): number => Math.min(...alternatives.map(([, duration]) => duration));

export function flexibleProblem(machines: number, jobs: FlexibleJobs): ShopProblem {
  const horizon = jobs.flat().reduce((sum, alternatives) => sum + longestOf(alternatives), 0);
  const pools = Array.from({ length: machines }, (_, m) => ({ id: `machine ${m}`, capacity: 1, open: [[0, horizon]] as const }));
  const tasks: ShopTask[] = [];
  const links: Link[] = [];
  const lasts: number[] = [];
  jobs.forEach((job, j) => {
    job.forEach((alternatives, o) => {
      if (o > 0) {
        const from = tasks.length - 1;
        links.push({ from, fromEdge: 'end', to: tasks.length, toEdge: 'start', min: 0, max: Number.POSITIVE_INFINITY });
      }
      const demand = {
        ...whole(alternatives.map(([machine]) => machine)),
        durations: alternatives.map(([, duration]) => duration),
      };
      tasks.push({
        id: `${j}.${o}`,
        minDuration: shortestOf(alternatives),
        maxDuration: longestOf(alternatives),
        earliestStart: 0,
        latestEnd: horizon,
        demands: [demand],
      });
    });
    lasts.push(tasks.length - 1);
  });
  return { ...EMPTY, horizon, tasks, links, pools, units: lasts.map((task, j) => mandatory(`job ${j}`, task)) };
}

export function recountFlexible(machines: number, jobs: FlexibleJobs, schedule: Schedule): Recount {
  const faults: string[] = [];
  const onMachine = Array.from({ length: machines }, (): { from: number; until: number; amount: number }[] => []);
  let task = 0;
  let value = 0;
  jobs.forEach((job, j) => {
    let free = 0;
    job.forEach((alternatives, o) => {
      const start = schedule.start[task] as number;
      const chosen = alternatives.find(([machine]) => machine === schedule.pools[task]?.[0]);
      task++;
      if (chosen === undefined || !alternatives.some(([m, d]) => m === chosen[0] && d === chosen[1])) {
        faults.push(`job ${j}: operation ${o} has no machine of its own`);
        return;
      }
      const end = start + chosen[1];
      if (start < free) faults.push(`job ${j}: operation ${o} begins before the last ends`);
      onMachine[chosen[0]]?.push({ from: start, until: end, amount: 1 });
      free = end;
    });
    value = Math.max(value, free);
  });
  onMachine.forEach((uses, m) => {
    const at = overloadedAt(uses, 1);
    if (at !== undefined) faults.push(`machine ${m}: two operations at ${at}`);
  });
  return { faults, value };
}

export function flexibleCases(): PublishedCase[] {
  return instancesOf('flexible').map(({ name, data }) => {
    const { machines, jobs, published } = schema.parse(data);
    return {
      folder: 'flexible',
      name,
      problem: flexibleProblem(machines, jobs),
      recount: (schedule) => recountFlexible(machines, jobs, schedule),
      published: { best: published.makespan.optimum ?? published.makespan.upperBound ?? null, isFeasible: true, isRead: true },
      priceShift: 0,
    };
  });
}
