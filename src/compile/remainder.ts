// A day under way as the compiler sees it: what of each batch and tray is over, at work, and still to come. Used by
// shopProblem.ts; times are minutes of the day until the task they belong to is made.
import type { Scenario } from '../model/scenario.ts';
import type { Underway, UnderwayTask } from '../model/underway.ts';
import type { Demand, ShopTask } from '../solver/problem.ts';
import type { ShopPools } from './shopPools.ts';
import { marginsOf, type Step, stepMinutes, waitsInPlace } from './shopTasks.ts';

/** A chain of steps, of a batch or a tray, that is under way or was planned before. */
export type OldChain = {
  readonly id: string;
  /** One for each step, in order. */
  readonly tasks: readonly UnderwayTask[];
};

export type OldBatch = OldChain & {
  readonly dough: string;
  readonly trays: readonly (OldChain & { readonly product: string })[];
};

function inOrder(tasks: readonly UnderwayTask[], steps: readonly Step[]): readonly UnderwayTask[] {
  return steps.map((step, i) => {
    const ordinal = steps.slice(0, i).filter((earlier) => earlier.do === step.do).length + 1;
    const found = tasks.find((task) => task.step === step.do && task.ordinal === ordinal);
    if (found === undefined)
      throw new RangeError(`the day under way says nothing of ${step.do} ${ordinal} of ${tasks[0]?.batch}`);
    return found;
  });
}

/** Batches of a day under way with the tasks of their steps. The scenario has been read and found sound. */
export function oldBatches(scenario: Scenario, underway: Underway): readonly OldBatch[] {
  return underway.batches.map(({ id, dough, trays }) => {
    const mine = underway.tasks.filter((task) => task.batch === id);
    const ofBatch = mine.filter((task) => task.tray === undefined);
    const steps = scenario.doughs.find((one) => one.id === dough)?.steps ?? [];
    return {
      id,
      dough,
      tasks: inOrder(ofBatch, steps),
      trays: trays.map((tray) => {
        const product = scenario.products.find((one) => one.id === tray.product);
        const ofTray = mine.filter((task) => task.tray === tray.id);
        return { id: tray.id, product: tray.product, tasks: inOrder(ofTray, product?.steps ?? []) };
      }),
    };
  });
}

/**
 * Latest end of a step and of the wait after it, as minutes from its start; the wait only where it keeps its place. Handwork takes
 * its minutes whatever happens: what it may run over is a wait.
 */
function longest(step: Step, old: UnderwayTask, isLast: boolean): number {
  const wait = isLast || !waitsInPlace(step) ? 0 : step.waitUpTo;
  const overrun = waitsInPlace(step) || step.do === 'bake' ? old.overrunMinutes : 0;
  return stepMinutes(step).max + old.moreMinutes + wait + overrun;
}

/** Minutes the next step may wait after this one ended, where the wait is in no place of its own. */
export function waitAfter(step: Step, old: UnderwayTask | null): number {
  if (waitsInPlace(step)) return 0;
  return step.waitUpTo + (old?.overrunMinutes ?? 0);
}

/** The place and people of a task as pools and deck: -1 where it has none. */
export type OldPlaces = { readonly chamber: number; readonly pools: readonly number[] };

/** Pools and deck a task was in, demand by demand. `isTogether`: one pair of hands serves a whole load, so hands do not count. */
export function oldPlaces(shop: ShopPools, task: ShopTask, old: UnderwayTask): OldPlaces {
  const chamber = old.place?.kind === 'deck' ? shop.decks.findIndex((deck) => deck.id === old.place?.id) : -1;
  const isTogether = shop.chambers[chamber]?.together === true;
  const pools = task.demands.map((demand) => {
    const roles = demand.pools.map((pool) => ({ pool, role: shop.roles[pool] }));
    const isHands = roles.some(({ role }) => role?.kind === 'people');
    if (isHands && isTogether && demand.oncePerLoad) return -1;
    const name = isHands ? personOf(old, demand) : old.place?.id;
    const found = roles.find(({ role }) => {
      if (role === undefined || name === undefined) return false;
      if (role.kind === 'people') return role.ids.includes(name);
      return role.kind === 'bench' || role.kind === 'rack' ? true : role.id === name;
    });
    return found?.pool ?? -1;
  });
  return { chamber, pools };
}

/** Whether a use of hands is the loading or the unloading of a bake, or neither. */
export function workOf(demand: Demand): 'load' | 'unload' | null {
  if (demand.from.edge === 'end') return 'unload';
  return demand.from.offset < 0 ? 'load' : null;
}

function personOf(old: UnderwayTask, demand: Demand): string | undefined {
  const work = workOf(demand);
  return old.handsOn.find((hands) => work === null || hands.for === work)?.person;
}

/** Whether a demand asks for somebody's hands. */
function isHands(shop: ShopPools, demand: Demand): boolean {
  return demand.pools.some((pool) => shop.roles[pool]?.kind === 'people');
}

/** Only the named pool of each demand that counts; any of its pools where it has none. */
function onlyIn(task: ShopTask, pools: readonly number[], counts: (demand: Demand) => boolean): Demand[] {
  return task.demands.map((demand, d) => {
    const pool = pools[d] ?? -1;
    return pool < 0 || !counts(demand) ? demand : { ...demand, pools: [pool] };
  });
}

/**
 * A task at work now, from now on: it began and goes on where it is. Times of the result count from `now`. Of a demand only what
 * is still to come is left, with whoever is at it; unloading is still anybody's.
 */
export function taskAtWork(
  task: ShopTask,
  step: Step,
  old: UnderwayTask,
  places: OldPlaces,
  now: number,
  isLast: boolean,
): ShopTask {
  const start = Math.max(0, old.start - now);
  const least = Math.max(0, old.start + stepMinutes(step).min + old.moreMinutes - now - start);
  const most = Math.max(least, old.start + longest(step, old, isLast) - now - start);
  const shift = old.start - now - start;
  const fixed = onlyIn(task, places.pools, (demand) => workOf(demand) !== 'unload');
  const demands = fixed.flatMap((demand): Demand[] => {
    const from = clipped(demand.from, start, shift);
    const until = clipped(demand.until, start, shift);
    const isOver = until.edge === 'start' && start + until.offset <= 0;
    return isOver ? [] : [{ ...demand, from, until }];
  });
  const { stay, ...rest } = task;
  const here = stay === undefined ? {} : { stay: { ...stay, chambers: [places.chamber], before: 0 } };
  return { ...rest, minDuration: least, maxDuration: most, earliestStart: start, latestStart: start, demands, ...here };
}

/** A point of a task that began before now, as a point of what is left of it: never before now. */
function clipped(mark: Demand['from'], start: number, shift: number): Demand['from'] {
  if (mark.edge === 'end') return mark;
  return { edge: 'start', offset: Math.max(mark.offset + shift, -start) };
}

/** A task still to come, with what is decided of it and the minutes it needs more. Times count from `now`. */
export function taskToCome(
  shop: ShopPools,
  task: ShopTask,
  step: Step,
  old: UnderwayTask,
  places: OldPlaces,
  now: number,
  isLast: boolean,
): ShopTask {
  const { before } = marginsOf(step);
  const keepsPlace = old.keeps.includes('place');
  const keepsPeople = old.keeps.includes('people');
  const demands = onlyIn(task, places.pools, (demand) => (isHands(shop, demand) ? keepsPeople : keepsPlace));
  const start = old.start - now;
  const time = old.keeps.includes('time') ? { earliestStart: Math.max(before, start), latestStart: start } : {};
  const stay = task.stay === undefined || !keepsPlace ? {} : { stay: { ...task.stay, chambers: [places.chamber] } };
  const minDuration = stepMinutes(step).min + old.moreMinutes;
  return { ...task, minDuration, maxDuration: longest(step, old, isLast), demands, ...time, ...stay };
}
