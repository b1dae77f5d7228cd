// Steps of a batch or a tray as tasks of the shop: how long, in which places, with whose hands, and the lags between them.
import type { BatchStep, TrayStep } from '../model/steps.ts';
import { type CelsiusOrRange, type Range, rangeOf } from '../model/units.ts';
import type { Demand, Edge, Link, ShopTask } from '../solver/problem.ts';
import { decksFor, handsFor, type PoolRole, poolsOf, type ShopPools } from './shopPools.ts';

export type Step = BatchStep | TrayStep;

/** Minutes a person is busy before a step's task begins (loading) and after it ends (unloading). */
export function marginsOf(step: Step): { readonly before: number; readonly after: number } {
  return step.do === 'bake' ? { before: step.load, after: step.unload } : { before: 0, after: 0 };
}

/** Shortest and longest minutes of a step. */
export function stepMinutes(step: Step): Range {
  switch (step.do) {
    case 'divide':
    case 'shape':
    case 'finish':
      return rangeOf(step.minutesPerTray);
    default:
      return rangeOf(step.minutes);
  }
}

/**
 * Whether the batch or tray waits, after this step, in the place it is in. Its task may then simply last longer:
 * the plan tells the step from the wait after it.
 */
export function waitsInPlace(step: Step): boolean {
  return step.do === 'bulk' || step.do === 'rest' || step.do === 'retard' || step.do === 'proof' || step.do === 'cool';
}

/** Minutes of hands-on work at the start of a mix. */
export function mixHandsOn(step: Extract<Step, { do: 'mix' }>): number {
  return Math.min(step.handsOn ?? step.minutes, step.minutes);
}

function isWithin(temperatureC: number, wanted: CelsiusOrRange | undefined): boolean {
  if (wanted === undefined) return true;
  const range = rangeOf(wanted);
  return range.min <= temperatureC && temperatureC <= range.max;
}

function demand(
  pools: readonly number[],
  from: readonly [Edge, number],
  until: readonly [Edge, number],
  oncePerLoad = false,
): Demand {
  return { pools, amount: 1, from: { edge: from[0], offset: from[1] }, until: { edge: until[0], offset: until[1] }, oncePerLoad };
}

const whole = (pools: readonly number[]): Demand => demand(pools, ['start', 0], ['end', 0]);

/** Places a step takes from its start to its end. Unlimited places ask for nothing. */
function placeDemands(shop: ShopPools, step: Step, batchKg: number): Demand[] {
  const among = (suits: (role: PoolRole) => boolean): Demand[] => [whole(poolsOf(shop, suits))];
  const has = (kind: PoolRole['kind']): boolean => shop.roles.some((role) => role.kind === kind);
  switch (step.do) {
    case 'mix':
      return has('bowl') ? among((role) => role.kind === 'bowl' && role.bowlKg >= batchKg) : [];
    case 'fold':
    case 'divide':
    case 'shape':
    case 'finish':
      return has('bench') ? among((role) => role.kind === 'bench') : [];
    case 'proof':
      return among((role) => role.kind === 'shelf' && isWithin(role.temperatureC, step.temperatureC));
    case 'retard':
      return among((role) => role.kind === 'retarder' && isWithin(role.temperatureC, step.temperatureC));
    case 'bulk':
      return step.where === 'retarder'
        ? among((role) => role.kind === 'retarder' && isWithin(role.temperatureC, step.temperatureC))
        : [];
    case 'cool':
      return has('rack') ? among((role) => role.kind === 'rack') : [];
    case 'rest':
    case 'bake':
      return [];
  }
}

/** People a step takes. A scenario without people asks for none. */
function handDemands(shop: ShopPools, step: Step): Demand[] {
  const hands = handsFor(shop, step.do);
  switch (step.do) {
    case 'mix':
      return mixHandsOn(step) > 0 ? [demand(hands, ['start', 0], ['start', mixHandsOn(step)])] : [];
    case 'fold':
    case 'divide':
    case 'shape':
    case 'finish':
      return [whole(hands)];
    case 'bake': {
      const load = demand(hands, ['start', -step.load], ['start', 0], true);
      const unload = demand(hands, ['end', 0], ['end', step.unload], true);
      return [...(step.load > 0 ? [load] : []), ...(step.unload > 0 ? [unload] : [])];
    }
    default:
      return [];
  }
}

/** First minutes of hands-on work of a step, as edges and offsets. */
export function handMarks(step: Step): readonly { readonly edge: Edge; readonly offset: number }[] {
  const marks = handDemands({ pools: [], roles: [], chambers: [], decks: [] }, step);
  return marks.map((mark) => mark.from);
}

/** A step as a task. `isLast`: no step follows, so nothing waits after it. */
export function taskOf(
  shop: ShopPools,
  id: string,
  step: Step,
  batchKg: number,
  horizon: number,
  isLast: boolean,
  hasPeople: boolean,
): ShopTask {
  const { min, max } = stepMinutes(step);
  const { before, after } = marginsOf(step);
  const wait = isLast || !waitsInPlace(step) ? 0 : step.waitUpTo;
  const task = {
    id,
    minDuration: min,
    maxDuration: max + wait,
    earliestStart: before,
    latestEnd: horizon - after,
    demands: [...placeDemands(shop, step, batchKg), ...(hasPeople ? handDemands(shop, step) : [])],
  };
  if (step.do !== 'bake') return task;
  const range = rangeOf(step.temperatureC);
  const chambers = decksFor(shop, step.temperatureC, step.steam);
  return { ...task, stay: { chambers, low: range.min, high: range.max, room: 1, before, after } };
}

/** The lag from the end of one step's task to the start of the next one's. */
export function lagBetween(from: number, step: Step, to: number, next: Step): Link {
  const least = marginsOf(step).after + marginsOf(next).before;
  const wait = waitsInPlace(step) ? 0 : step.waitUpTo;
  return { from, fromEdge: 'end', to, toEdge: 'start', min: least, max: least + wait };
}
