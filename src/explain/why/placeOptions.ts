// The places where a step other than a bake could be done, with the room in each. Used by why.
import { placeKindOf } from '../../check/places.ts';
import { sayC, sayMinute } from '../../check/sayMinute.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { type Range, rangeOf } from '../../model/units.ts';
import type { Ground, Standing } from './ground.ts';
import { type Hands, handsFor } from './handsFree.ts';
import type { Condition, Hindrance, NextBegins, Option } from './option.ts';
import { inWords, nameOfTask, resourceWords, sayLength } from './words.ts';

type PlacedStep = Exclude<BatchStep | TrayStep, { do: 'bake' }>;

/** Shortest and longest minutes of a step. */
export function minutesOf(step: BatchStep | TrayStep): Range {
  return rangeOf('minutesPerTray' in step ? step.minutesPerTray : step.minutes);
}

const KEPT = ['shelf', 'retarder', 'rack'];

/** The span around a minute in which a place has no room. */
export function fullAround({ held, resource }: Standing, minute: number): { readonly start: number; readonly end: number } {
  const isFull = (t: number): boolean => t >= 0 && t < held.length && (held[t] as number) >= resource.room;
  let start = minute;
  let end = minute;
  while (isFull(start - 1)) start--;
  while (isFull(end)) end++;
  return { start, end };
}

/** Room for the shortest stay from a minute on. */
export function roomIn(ground: Ground, standing: Standing, rule: Condition['rule'], after: number, minutes: number): Condition {
  const { resource, freeRun } = standing;
  const hinders = (minute: number): Hindrance => {
    const at = minute + after;
    const free = freeRun[at] ?? 0;
    const blockedAt = at + free;
    const what = resourceWords(resource.kind, resource.name);
    const isMany = resource.kind === 'shelf';
    if (blockedAt >= ground.minutes) return { says: 'the day ends first', full: [], byTasks: [] };
    if (resource.room === 0) return { says: `${what} ${isMany ? 'have' : 'has'} no place`, full: [], byTasks: [] };
    const full = fullAround(standing, blockedAt);
    const holders = resource.holders.filter((one) => one.from <= blockedAt && one.until > blockedAt);
    const count =
      resource.room === 1 ? nameOfTask(holders[0]?.taskId ?? '') : `${inWords(resource.room)} of ${inWords(resource.room)}`;
    const say = (t: number): string => sayMinute(ground.day.clock, t);
    const isFull = `${what} ${isMany ? 'are' : 'is'} ${resource.room === 1 ? 'taken' : 'full'} ${say(full.start)} to ${say(full.end)} (${count})`;
    const leaves = free === 0 ? '' : `, which leaves ${sayLength(free)} from ${say(at)} where ${sayLength(minutes)} are needed`;
    // Whoever leaves first makes room.
    const byTasks = [...holders].sort((a, b) => a.until - b.until).map(({ taskId }) => taskId);
    return { says: `${isFull}${leaves}`, full: [full], byTasks };
  };
  return { kind: resource.kind, id: resource.id, rule, holds: (minute) => (freeRun[minute + after] ?? 0) >= minutes, hinders };
}

const ROOM_RULES = {
  bowl: 'BOWL_CAPACITY',
  bench: 'BENCH_CAPACITY',
  shelf: 'SHELF_CAPACITY',
  retarder: 'RETARDER_CAPACITY',
  rack: 'RACK_CAPACITY',
} as const;

const never = (kind: Condition['kind'], id: string, rule: Condition['rule'], says: string): Condition => ({
  kind,
  id,
  rule,
  holds: () => false,
  hinders: () => ({ says, full: [], byTasks: [] }),
});

/** What keeps a step out of a place at any time: a bowl too small, a cabinet too warm or too cold. */
function atAnyTime(ground: Ground, step: PlacedStep, standing: Standing, batchKg: number): readonly Condition[] {
  const { kind, id, name } = standing.resource;
  const { equipment } = ground.day.scenario;
  const what = resourceWords(kind, name);
  if (kind === 'bowl') {
    const bowlKg = equipment.mixers?.find((one) => one.id === id)?.bowlKg ?? Number.POSITIVE_INFINITY;
    if (bowlKg >= batchKg - 1e-6) return [];
    return [
      never(kind, id, 'BOWL_SIZE', `${what} takes ${bowlKg} kg, and the batch weighs ${Math.round(batchKg * 1000) / 1000} kg`),
    ];
  }
  const allowed = 'temperatureC' in step && step.temperatureC !== undefined ? rangeOf(step.temperatureC) : null;
  const cabinets = kind === 'shelf' ? equipment.proofers : kind === 'retarder' ? equipment.retarders : [];
  const isC = cabinets.find((one) => one.id === id)?.temperatureC;
  if (allowed === null || isC === undefined || (isC >= allowed.min && isC <= allowed.max)) return [];
  const rule = kind === 'shelf' ? 'SHELF_TEMPERATURE' : 'RETARDER_TEMPERATURE';
  return [
    never(
      kind,
      id,
      rule,
      `${name} is kept at ${sayC(isC)}, and the tray wants ${sayC(allowed.min).slice(0, -2)} to ${sayC(allowed.max)}`,
    ),
  ];
}

function handsOf(ground: Ground, step: PlacedStep): Hands | null {
  if (step.do === 'mix') {
    const minutes = Math.min(step.handsOn ?? step.minutes, step.minutes);
    return handsFor(ground, 'mix', { after: 0, minutes });
  }
  if (step.do === 'fold') return handsFor(ground, 'fold', { after: 0, minutes: step.minutes });
  if ('minutesPerTray' in step) return handsFor(ground, step.do, { after: 0, minutes: step.minutesPerTray });
  return null;
}

/** After how long the next step may begin, where a place that is kept while waiting has room for so long. */
function nextAfter(step: PlacedStep, minute: number, stays: number): readonly NextBegins[] {
  const { min, max } = minutesOf(step);
  return [{ from: minute + min, to: Math.min(minute + max + step.waitUpTo, minute + stays) }];
}

/** Every place of the right kind; one option without a place where the step needs none or there is no limit. */
export function placeOptions(ground: Ground, step: PlacedStep, batchKg: number): readonly Option[] {
  const kind = placeKindOf(step);
  const hands = handsOf(ground, step);
  const handsFirst = { conditions: hands === null ? [] : [hands.condition], people: hands?.people ?? [] };
  const places = ground.standing.filter(({ resource }) => resource.kind === kind);
  const isLimited = kind === 'shelf' || kind === 'retarder' || places.length > 0;
  if (kind === undefined || kind === 'deck' || !isLimited) {
    const next = (minute: number): readonly NextBegins[] => nextAfter(step, minute, Number.POSITIVE_INFINITY);
    return [{ name: '', ...handsFirst, next }];
  }
  const { min } = minutesOf(step);
  return places.map((standing) => ({
    name: standing.resource.name,
    conditions: [
      ...atAnyTime(ground, step, standing, batchKg),
      roomIn(ground, standing, ROOM_RULES[kind], 0, min),
      ...handsFirst.conditions,
    ],
    people: handsFirst.people,
    next: (minute) => {
      const isKept = KEPT.includes(kind);
      return nextAfter(step, minute, isKept ? (standing.freeRun[minute] ?? 0) : Number.POSITIVE_INFINITY);
    },
  }));
}
