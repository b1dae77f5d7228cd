// What begins as one: each job by itself, the bakes of a load together. In the order in which it was to begin.
import type { Plan } from '../../model/plan.ts';
import { type Job, loadsOf } from './runs.ts';

export function actsOf(jobs: readonly Job[], plan: Plan): readonly (readonly Job[])[] {
  const loads = loadsOf(plan);
  const jobById = new Map(jobs.map((job) => [job.task.id, job]));
  const done = new Set<string>();
  return jobs.flatMap((job) => {
    if (done.has(job.task.id)) return [];
    const load = (loads.get(job.task.id) ?? [job.task]).flatMap(({ id }) => jobById.get(id) ?? []);
    for (const { task } of load) done.add(task.id);
    return [load];
  });
}
