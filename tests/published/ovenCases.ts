// The Oven Scheduling Problem (Lackner, Mrkvicka, Musliu, Walkiewicz and Winter 2023, Constraints 28), as far as the neutral
// problem holds it: what it lacks is named in docs/published.md. The recount knows the published problem alone: setups by the
// published matrices, placed right before each batch, and the published objective.
import { z } from 'zod';
import type { Schedule, ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { EMPTY, mandatory } from '../solver/shops.ts';
import { instancesOf } from './benchFolder.ts';
import type { PublishedCase, Recount } from './publishedCase.ts';

const objectiveSchema = z.object({
  weights: z.object({ runtime: z.number(), tardyJobs: z.number(), setupCosts: z.number() }),
  normalisation: z.number(),
});
const bestSchema = z.object({ bestKnown: z.object({ normalised: z.number() }) });
const useCases = <T extends z.ZodType>(one: T) => z.object({ uc1: one, uc2: one, uc3: one });
export const ovenSchema = z.object({
  horizon: z.number(),
  attributes: z.number(),
  setupTimes: z.array(z.array(z.number())),
  setupCosts: z.array(z.array(z.number())),
  machines: z.array(
    z.object({ capacity: z.number(), initialAttribute: z.number(), availability: z.array(z.tuple([z.number(), z.number()])) }),
  ),
  jobs: z.array(
    z.object({
      size: z.number(),
      attribute: z.number(),
      minTime: z.number(),
      maxTime: z.number(),
      earliestStart: z.number(),
      latestEnd: z.number(),
      machines: z.array(z.number()),
    }),
  ),
  objectives: useCases(objectiveSchema),
  published: useCases(bestSchema),
});

export type OvenInstance = Omit<z.infer<typeof ovenSchema>, 'published'>;
type Span = readonly [from: number, until: number];

/** Open spans with those that touch made one: the neutral problem knows a machine open or closed, and no seam. */
export function openSpans(availability: readonly Span[]): Span[] {
  const spans: [number, number][] = [];
  for (const [from, until] of availability) {
    const last = spans[spans.length - 1];
    if (last !== undefined && last[1] === from) last[1] = until;
    else spans.push([from, until]);
  }
  return spans;
}

function closedSpans(availability: readonly Span[], horizon: number): Span[] {
  const open = openSpans(availability);
  const edges = [0, ...open.flat(), horizon];
  return Array.from({ length: open.length + 1 }, (_, i): Span => [edges[2 * i] as number, edges[2 * i + 1] as number]).filter(
    ([from, until]) => from < until,
  );
}

/** The longest setup to an attribute, from any: what a load carries in front of it. */
export function setupBefore({ setupTimes }: OvenInstance, attribute: number): number {
  return Math.max(...setupTimes.map((row) => row[attribute] as number));
}

/** A stay that fills a machine while it is closed. */
function closures({ machines, attributes, horizon }: OvenInstance): ShopTask[] {
  return machines.flatMap(({ availability, capacity }, m) =>
    closedSpans(availability, horizon).map(([from, until]) => ({
      id: `machine ${m} closed from ${from}`,
      minDuration: until - from,
      maxDuration: until - from,
      earliestStart: from,
      latestEnd: until,
      demands: [],
      stay: { chambers: [m], low: 0, high: attributes - 1, room: capacity, before: 0, after: 0 },
    })),
  );
}

export function ovenProblem(instance: OvenInstance): ShopProblem {
  const { horizon, attributes, machines, jobs, setupCosts } = instance;
  const tasks = jobs.map(({ attribute, size, minTime, maxTime, earliestStart, machines: chambers }, j): ShopTask => {
    const setup = setupBefore(instance, attribute);
    return {
      id: `job ${j}`,
      minDuration: setup + minTime,
      maxDuration: setup + maxTime,
      earliestStart: Math.max(0, earliestStart - setup),
      latestEnd: horizon,
      demands: [],
      stay: { chambers, low: attribute, high: attribute, room: size, before: 0, after: 0 },
    };
  });
  const costs = setupCosts.flat();
  return {
    ...EMPTY,
    horizon,
    tasks: [...tasks, ...closures(instance)],
    chambers: machines.map(({ capacity, initialAttribute }, m) => ({
      id: `machine ${m}`,
      room: capacity,
      min: 0,
      max: attributes - 1,
      initial: initialAttribute,
      riseRate: attributes,
      fallRate: attributes,
      together: true,
    })),
    units: jobs.map((_, j) => mandatory(`job ${j}`, j, j)),
    families: jobs.map(({ latestEnd }) => ({ dues: [latestEnd], latePrice: 1 })),
    // The published objective has no makespan.
    prices: {
      makespan: 0,
      stateChange: Math.round(costs.reduce((sum, cost) => sum + cost, 0) / costs.length),
      fromFirstMark: false,
    },
  };
}

type Load = { readonly machine: number; readonly start: number; readonly end: number; readonly jobs: readonly number[] };

/** Jobs that share machine and start are one batch. The stay begins with the setup; the batch begins after it. */
function loadsOf(instance: OvenInstance, schedule: Schedule): Load[] {
  const loads = new Map<string, { machine: number; start: number; end: number; jobs: number[] }>();
  instance.jobs.forEach(({ attribute }, j) => {
    const machine = schedule.chamber[j] as number;
    const start = (schedule.start[j] as number) + setupBefore(instance, attribute);
    const key = `${machine} ${start}`;
    const load = loads.get(key) ?? { machine, start, end: schedule.end[j] as number, jobs: [] };
    load.jobs.push(j);
    loads.set(key, load);
  });
  return [...loads.values()].sort((a, b) => a.machine - b.machine || a.start - b.start);
}

function loadFaults(instance: OvenInstance, load: Load, schedule: Schedule): string[] {
  const machine = instance.machines[load.machine];
  if (machine === undefined) return [`jobs ${load.jobs}: on no machine`];
  const name = `batch at ${load.start} on ${load.machine}`;
  const faults: string[] = [];
  const list = load.jobs.map((j) => ({ j, ...(instance.jobs[j] as OvenInstance['jobs'][number]) }));
  const lasts = load.end - load.start;
  if (new Set(list.map(({ attribute }) => attribute)).size > 1) faults.push(`${name}: two attributes`);
  if (list.reduce((sum, { size }) => sum + size, 0) > machine.capacity) faults.push(`${name}: too full`);
  for (const { j, machines, minTime, maxTime, earliestStart } of list) {
    if (!machines.includes(load.machine)) faults.push(`${name}: job ${j} may not be there`);
    if (lasts < minTime || lasts > maxTime) faults.push(`${name}: job ${j} for ${lasts}`);
    if (load.start < earliestStart) faults.push(`${name}: job ${j} comes later`);
    if (schedule.end[j] !== load.end) faults.push(`${name}: job ${j} ends by itself`);
  }
  return faults;
}

export function recountOvens(instance: OvenInstance, schedule: Schedule): Recount {
  const loads = loadsOf(instance, schedule);
  const faults = loads.flatMap((load) => loadFaults(instance, load, schedule));
  let setupCosts = 0;
  loads.forEach((load, l) => {
    const machine = instance.machines[load.machine];
    if (machine === undefined) return;
    const previous = loads[l - 1]?.machine === load.machine ? loads[l - 1] : undefined;
    const attributeOf = (one: Load): number => instance.jobs[one.jobs[0] as number]?.attribute as number;
    const from = previous === undefined ? machine.initialAttribute : attributeOf(previous);
    const setup = instance.setupTimes[from]?.[attributeOf(load)] as number;
    setupCosts += instance.setupCosts[from]?.[attributeOf(load)] as number;
    const begins = load.start - setup;
    if (begins < (previous?.end ?? 0)) faults.push(`batch at ${load.start} on ${load.machine}: no time for its setup`);
    const isOpen = openSpans(machine.availability).some(([open, shut]) => open <= begins && load.end <= shut);
    if (!isOpen) faults.push(`batch at ${load.start} on ${load.machine}: while it is closed`);
  });
  const runtime = loads.reduce((sum, { start, end }) => sum + end - start, 0);
  const tardyJobs = instance.jobs.filter(({ latestEnd }, j) => (schedule.end[j] as number) > latestEnd).length;
  const normalised = (name: 'uc1' | 'uc2' | 'uc3'): number => {
    const { weights, normalisation } = instance.objectives[name];
    return (weights.runtime * runtime + weights.tardyJobs * tardyJobs + weights.setupCosts * setupCosts) / normalisation;
  };
  const details = { uc1: normalised('uc1'), uc2: normalised('uc2'), uc3: normalised('uc3'), runtime, tardyJobs, setupCosts };
  return { faults, value: details.uc1, details };
}

export function ovenCases(): PublishedCase[] {
  return instancesOf('osp').map(({ name, data }) => {
    const { published, ...instance } = ovenSchema.parse(data);
    const printed = (one: z.infer<typeof bestSchema>): number => one.bestKnown.normalised;
    const details = { uc1: printed(published.uc1), uc2: printed(published.uc2), uc3: printed(published.uc3) };
    return {
      folder: 'osp',
      name,
      problem: ovenProblem(instance),
      recount: (schedule) => recountOvens(instance, schedule),
      published: { best: details.uc1, isFeasible: true, isRead: true, details },
      priceShift: null,
    };
  });
}
