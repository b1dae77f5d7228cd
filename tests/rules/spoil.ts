// Spoils a good plan or scenario for the tests of the rules, and says which codes the judge sees.
import { judge } from '../../src/check/judge.ts';
import type { RuleCode } from '../../src/model/rules.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import type { WrittenPlan, WrittenTask } from '../../src/model/writtenPlan.ts';

/** Codes the judge sees, each once, in its order. */
export function codesSeen(scenario: Scenario, plan: WrittenPlan): readonly RuleCode[] {
  return [...new Set(judge(scenario, plan).breaches.map(({ rule }) => rule))];
}

/** Values by their paths, to compare two things leaf by leaf. */
function leaves(value: unknown, path = ''): readonly (readonly [string, unknown])[] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, part]) => leaves(part, `${path}/${key}`));
}

function differences(before: unknown, after: unknown): readonly string[] {
  const [a, b] = [new Map(leaves(before)), new Map(leaves(after))];
  return [...new Set([...a.keys(), ...b.keys()])].filter((path) => a.get(path) !== b.get(path));
}

/** A copy with some edits; the original stays good. */
export function edited<T>(good: T, edit: (copy: T) => void): T {
  const copy = structuredClone(good);
  edit(copy);
  return copy;
}

/** A copy with exactly one number or word changed. Throws when the edit changes more, or nothing. */
export function spoiled<T>(good: T, edit: (copy: T) => void): T {
  const copy = edited(good, edit);
  const changed = differences(good, copy);
  if (changed.length !== 1) throw new Error(`a spoil changes one value, not ${changed.length}: ${changed.join(', ')}`);
  return copy;
}

/** The task with an id. */
export function task(plan: WrittenPlan, id: string): WrittenTask {
  const found = plan.tasks.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no task ${id}`);
  return found;
}

/** The place of the task with an id. */
export function placeOf(plan: WrittenPlan, id: string): NonNullable<WrittenTask['place']> {
  const { place } = task(plan, id);
  if (place === undefined) throw new Error(`task ${id} has no place`);
  return place;
}

/** A piece of hands-on work of the task with an id, from 0. */
export function workOf(plan: WrittenPlan, id: string, index = 0): WrittenTask['handsOn'][number] {
  const work = task(plan, id).handsOn[index];
  if (work === undefined) throw new Error(`task ${id} has no work ${index}`);
  return work;
}

/** A move of a deck, from 0. */
export function moveOf(plan: WrittenPlan, deckId: string, index = 0): WrittenPlan['decks'][number]['setPoints'][number] {
  const move = plan.decks.find(({ id }) => id === deckId)?.setPoints[index];
  if (move === undefined) throw new Error(`deck ${deckId} has no move ${index}`);
  return move;
}

/** The same place in a list every time: throws rather than hand out undefined. */
export function nth<T>(list: readonly T[] | undefined, index: number): T {
  const found = list?.[index];
  if (found === undefined) throw new Error(`no entry ${index}`);
  return found;
}
