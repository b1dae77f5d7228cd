// Projects with scarce resources (RCPSP), and with minimum and maximum lags as well (RCPSP/max): activities of stated durations
// need so much of each resource; the least makespan. The published optima are those of the makespan, the start of the sink.
import { z } from 'zod';
import type { Link, Schedule, ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { EMPTY, mandatory, whole } from '../solver/shops.ts';
import { instancesOf } from './benchFolder.ts';
import { overloadedAt, type PublishedCase, type Recount } from './publishedCase.ts';

const activitySchema = z.object({ duration: z.number(), demands: z.array(z.number()) });
const plainSchema = z.object({
  capacities: z.array(z.number()),
  activities: z.array(activitySchema),
  precedences: z.array(z.tuple([z.number(), z.number()])),
  published: z.object({ optimum: z.number() }),
});
const maxSchema = plainSchema.extend({
  precedences: z.array(z.tuple([z.number(), z.number(), z.number()])),
  published: z.object({ feasible: z.boolean(), optimum: z.number().nullable() }),
});

type Activity = z.infer<typeof activitySchema>;

/** start[to] >= start[from] + lag; a lag below zero is a maximum lag the other way. */
type Lag = readonly [from: number, to: number, lag: number];

export type Project = {
  readonly capacities: readonly number[];
  readonly activities: readonly Activity[];
  readonly lags: readonly Lag[];
};

/** Feasible projects have a best schedule no longer than this (Bartusch, Möhring and Radermacher 1988). */
function longestOf({ activities, lags }: Project): number {
  return activities.reduce(
    (sum, { duration }, i) => sum + Math.max(duration, ...lags.filter(([from]) => from === i).map(([, , lag]) => lag)),
    0,
  );
}

export function projectProblem(project: Project): ShopProblem {
  const horizon = longestOf(project);
  const sink = project.activities.length - 1;
  const tasks = project.activities.map(
    ({ duration, demands }, i): ShopTask => ({
      id: `activity ${i}`,
      minDuration: duration,
      maxDuration: duration,
      earliestStart: 0,
      latestEnd: i === 0 ? 0 : horizon,
      demands: demands.flatMap((amount, r) => (amount > 0 ? [whole([r], amount)] : [])),
    }),
  );
  const links = project.lags.map(
    ([from, to, lag]): Link => ({ from, fromEdge: 'start', to, toEdge: 'start', min: lag, max: Number.POSITIVE_INFINITY }),
  );
  const pools = project.capacities.map((capacity, r) => ({ id: `resource ${r}`, capacity, open: [[0, horizon]] as const }));
  return { ...EMPTY, horizon, tasks, links, pools, units: [mandatory('sink', sink)] };
}

export function recountProject({ capacities, activities, lags }: Project, schedule: Schedule): Recount {
  const { start } = schedule;
  const faults = lags
    .filter(([from, to, lag]) => (start[to] as number) < (start[from] as number) + lag)
    .map(([from, to, lag]) => `${to} begins less than ${lag} after ${from}`);
  activities.forEach((_, i) => {
    if ((start[i] as number) < 0) faults.push(`activity ${i} is not planned`);
  });
  if (start[0] !== 0) faults.push('the source does not begin at 0');
  capacities.forEach((capacity, r) => {
    const uses = activities.map(({ duration, demands }, i) => {
      const from = start[i] as number;
      return { from, until: from + duration, amount: demands[r] as number };
    });
    const at = overloadedAt(uses, capacity);
    if (at !== undefined) faults.push(`resource ${r} is above its capacity at ${at}`);
  });
  return { faults, value: start[activities.length - 1] as number };
}

function caseOf(folder: 'rcpsp' | 'rcpsp-max', name: string, project: Project, optimum: number | null): PublishedCase {
  return {
    folder,
    name,
    problem: projectProblem(project),
    recount: (schedule) => recountProject(project, schedule),
    published: { best: optimum, isFeasible: optimum !== null, isRead: true },
    priceShift: 0,
  };
}

export function projectCases(): PublishedCase[] {
  return instancesOf('rcpsp').map(({ name, data }) => {
    const { capacities, activities, precedences, published } = plainSchema.parse(data);
    const lags = precedences.map(([from, to]): Lag => [from, to, (activities[from] as Activity).duration]);
    return caseOf('rcpsp', name, { capacities, activities, lags }, published.optimum);
  });
}

export function projectCasesWithMaximumLags(): PublishedCase[] {
  return instancesOf('rcpsp-max').map(({ name, data }) => {
    const { capacities, activities, precedences, published } = maxSchema.parse(data);
    return caseOf('rcpsp-max', name, { capacities, activities, lags: precedences }, published.optimum);
  });
}
