// Job shops as published: the classic problem, without waiting, blocking, and with few operators. Every job goes through its
// machines in a stated order; a machine does one operation at a time.
import { z } from 'zod';
import type { Schedule, ShopProblem } from '../../src/solver/problem.ts';
import { jobShop, whole } from '../solver/shops.ts';
import { instancesOf } from './benchFolder.ts';
import { overloadedAt, type Published, type PublishedCase, type Recount } from './publishedCase.ts';

const valueSchema = z.object({ optimum: z.number().nullable(), upperBound: z.number().optional() });
const schema = z.object({
  machines: z.number(),
  jobs: z.array(z.array(z.tuple([z.number(), z.number()]))),
  published: z.object({
    makespan: valueSchema,
    blockingMakespan: valueSchema.optional(),
    makespanWithOperators: z.record(z.string(), valueSchema).optional(),
  }),
  computedHere: z.object({ noWaitMakespan: z.object({ value: z.number() }).optional() }).nullable(),
});

export type Jobs = readonly (readonly (readonly [machine: number, duration: number])[])[];

/** What must hold between two operations of a job, and for how many operations there are hands at any time. */
export type Variant = { readonly kind: 'classic' | 'no-wait' | 'blocking'; readonly operators: number };

const CLASSIC: Variant = { kind: 'classic', operators: Number.POSITIVE_INFINITY };

/** A job keeps its machine until its next operation begins: an operation may last longer than it works. */
function blocking(problem: ShopProblem): ShopProblem {
  const isLast = (task: number): boolean => !problem.links.some((link) => link.from === task);
  return {
    ...problem,
    tasks: problem.tasks.map((task, i) => (isLast(i) ? task : { ...task, maxDuration: problem.horizon })),
    links: problem.links.map((link) => ({ ...link, min: 0, max: 0 })),
  };
}

function withOperators(problem: ShopProblem, operators: number): ShopProblem {
  const pool = problem.pools.length;
  return {
    ...problem,
    pools: [...problem.pools, { id: 'operators', capacity: operators, open: [[0, problem.horizon]] }],
    tasks: problem.tasks.map((task) => ({ ...task, demands: [...task.demands, whole([pool])] })),
  };
}

export function jobShopProblem(jobs: Jobs, { kind, operators }: Variant): ShopProblem {
  const plain = jobShop(jobs, kind === 'no-wait' ? 0 : Number.POSITIVE_INFINITY);
  const held = kind === 'blocking' ? blocking(plain) : plain;
  return Number.isFinite(operators) ? withOperators(held, operators) : held;
}

type Operation = {
  readonly job: number;
  readonly machine: number;
  readonly start: number;
  readonly end: number;
  readonly leaves: number;
};

/** The operations in the order of the tasks, read from their starts: when each begins, ends, and leaves its machine. */
function operationsOf(jobs: Jobs, { kind }: Variant, schedule: Schedule): Operation[][] {
  let task = 0;
  return jobs.map((job, j) => {
    const starts = job.map((_, o) => schedule.start[task + o] as number);
    task += job.length;
    return job.map(([machine, duration], o) => {
      const start = starts[o] as number;
      const end = start + duration;
      return { job: j, machine, start, end, leaves: kind === 'blocking' ? (starts[o + 1] ?? end) : end };
    });
  });
}

export function recountJobShop(jobs: Jobs, variant: Variant, schedule: Schedule): Recount {
  const rows = operationsOf(jobs, variant, schedule);
  const all = rows.flat();
  const faults: string[] = [];
  rows.forEach((row, j) => {
    row.forEach((operation, o) => {
      const before = row[o - 1]?.end ?? 0;
      if (operation.start < before) faults.push(`job ${j}: operation ${o} begins before the last ends`);
      if (variant.kind === 'no-wait' && o > 0 && operation.start !== before) faults.push(`job ${j}: waits before ${o}`);
    });
  });
  for (const machine of new Set(all.map((operation) => operation.machine))) {
    const uses = all
      .filter((one) => one.machine === machine)
      .map(({ start, leaves }) => ({ from: start, until: leaves, amount: 1 }));
    const at = overloadedAt(uses, 1);
    if (at !== undefined) faults.push(`machine ${machine}: two operations at ${at}`);
  }
  const hands = all.map(({ start, end }) => ({ from: start, until: end, amount: 1 }));
  const at = overloadedAt(hands, variant.operators);
  if (at !== undefined) faults.push(`more than ${variant.operators} operations at ${at}`);
  return { faults, value: Math.max(...all.map(({ end }) => end)) };
}

function caseOf(name: string, jobs: Jobs, variant: Variant, published: Published): PublishedCase {
  return {
    folder: 'jobshop',
    name,
    problem: jobShopProblem(jobs, variant),
    recount: (schedule) => recountJobShop(jobs, variant, schedule),
    published,
    priceShift: 0,
  };
}

const read = (best: number | null | undefined): Published => ({ best: best ?? null, isFeasible: true, isRead: true });

export function jobShopCases(): PublishedCase[] {
  return instancesOf('jobshop').flatMap(({ name, data }) => {
    const { jobs, published, computedHere } = schema.parse(data);
    const cases = [caseOf(name, jobs, CLASSIC, read(published.makespan.optimum))];
    const noWait = computedHere?.noWaitMakespan;
    if (noWait !== undefined) {
      const variant: Variant = { ...CLASSIC, kind: 'no-wait' };
      cases.push(caseOf(`${name} no-wait`, jobs, variant, { best: noWait.value, isFeasible: true, isRead: false }));
    }
    const blocked = published.blockingMakespan;
    if (blocked !== undefined) {
      cases.push(caseOf(`${name} blocking`, jobs, { ...CLASSIC, kind: 'blocking' }, read(blocked.optimum ?? blocked.upperBound)));
    }
    for (const [operators, value] of Object.entries(published.makespanWithOperators ?? {})) {
      const variant: Variant = { ...CLASSIC, operators: Number(operators) };
      cases.push(caseOf(`${name} operators ${operators}`, jobs, variant, read(value.optimum ?? value.upperBound)));
    }
    return cases;
  });
}
