// Flexible job shops: each operation on one of several machines, and how long it takes depends on which.
import { z } from 'zod';
import type { Demand, Link, Schedule, ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { EMPTY, mandatory } from '../solver/shops.ts';
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

/** Machines on which an operation takes equally long. */
type Speed = { readonly duration: number; readonly machines: readonly number[] };

/** Quickest first. */
function speedsOf(alternatives: readonly Alternative[]): Speed[] {
  const durations = [...new Set(alternatives.map(([, duration]) => duration))].sort((a, b) => a - b);
  return durations.map((duration) => ({
    duration,
    machines: alternatives.flatMap(([machine, lasts]) => (lasts === duration ? [machine] : [])),
  }));
}

function demandOf(pools: readonly number[], amount: number, from: Demand['from'], until: Demand['until']): Demand {
  return { pools, amount, from, until, oncePerLoad: false };
}

/**
 * An operation whose length goes with its machine. The neutral problem has no such thing; this says it with what there is.
 * For each speed a demand that takes a machine, or a slot of its own that stands for "not at this speed". As long as the
 * operation is shorter than a speed's duration, something small must find room in the slot of a quicker speed, which has room
 * only while that speed's demand is on a machine. `unit` is the capacity of machines and slots.
 */
function demandsOf(speeds: readonly Speed[], firstSlot: number, unit: number): Demand[] {
  const slots = speeds.map((_, s) => firstSlot + s);
  const start = { edge: 'start', offset: 0 } as const;
  const taken = speeds.map(({ machines, duration }, s) =>
    demandOf([...machines, slots[s] as number], unit, start, { edge: 'start', offset: duration }),
  );
  const second = { edge: 'start', offset: 1 } as const;
  const kept = speeds.slice(1).map(({ duration }, s) =>
    // Of no length when the operation lasts `duration` or more.
    demandOf(slots.slice(0, s + 1), 1, { edge: 'end', offset: 1 - duration }, second),
  );
  return [...taken, ...kept, demandOf(slots, 1, start, second)];
}

const longestOf = (alternatives: readonly Alternative[]): number => Math.max(...alternatives.map(([, duration]) => duration));
const shortestOf = (alternatives: readonly Alternative[]): number => Math.min(...alternatives.map(([, duration]) => duration));

/** Room before the first operation for demands that reach back from its end. */
export function shiftOf(jobs: FlexibleJobs): number {
  return Math.max(0, ...jobs.flat().map((alternatives) => longestOf(alternatives) - shortestOf(alternatives) - 1));
}

export function flexibleProblem(machines: number, jobs: FlexibleJobs): ShopProblem {
  const shift = shiftOf(jobs);
  const horizon = jobs.flat().reduce((sum, alternatives) => sum + longestOf(alternatives), shift);
  const unit = Math.max(...jobs.flat().map((alternatives) => speedsOf(alternatives).length));
  const always = [[0, horizon]] as const;
  const pools = Array.from({ length: machines }, (_, m) => ({ id: `machine ${m}`, capacity: unit, open: always }));
  const tasks: ShopTask[] = [];
  const links: Link[] = [];
  const lasts: number[] = [];
  jobs.forEach((job, j) => {
    job.forEach((alternatives, o) => {
      const speeds = speedsOf(alternatives);
      const [only] = speeds;
      const start = { edge: 'start', offset: 0 } as const;
      const end = { edge: 'end', offset: 0 } as const;
      const isOne = speeds.length === 1 && only !== undefined;
      if (o > 0) {
        const from = tasks.length - 1;
        links.push({ from, fromEdge: 'end', to: tasks.length, toEdge: 'start', min: 0, max: Number.POSITIVE_INFINITY });
      }
      tasks.push({
        id: `${j}.${o}`,
        minDuration: shortestOf(alternatives),
        maxDuration: longestOf(alternatives),
        earliestStart: shift,
        latestEnd: horizon,
        demands: isOne ? [demandOf(only.machines, unit, start, end)] : demandsOf(speeds, pools.length, unit),
      });
      if (!isOne)
        pools.push(...speeds.map(({ duration }) => ({ id: `${j}.${o} not in ${duration}`, capacity: unit, open: always })));
    });
    lasts.push(tasks.length - 1);
  });
  return { ...EMPTY, horizon, tasks, links, pools, units: lasts.map((task, j) => mandatory(`job ${j}`, task)) };
}

/** Where an operation runs: at the quickest speed at which the schedule gives it a machine. */
function machineOf(machines: number, alternatives: readonly Alternative[], pools: readonly number[]): Alternative | undefined {
  const speeds = speedsOf(alternatives);
  const taken = speeds.findIndex((_, s) => (pools[s] ?? -1) >= 0 && (pools[s] as number) < machines);
  const speed = speeds[taken];
  return speed === undefined ? undefined : [pools[taken] as number, speed.duration];
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
      const chosen = machineOf(machines, alternatives, schedule.pools[task] ?? []);
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
  return { faults, value: value - shiftOf(jobs) };
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
      priceShift: -shiftOf(jobs),
    };
  });
}
