// Units that are alike in everything are put in an order: trays of one batch and product, and whole batches of alike trays.
// Any schedule can be renamed to keep it, so no price is lost, and the solver need not try every renaming.
import type { ShopProblem, ShopTask, Unit } from '../../src/solver/problem.ts';
import type { ModelDraft } from './modelDraft.ts';
import type { ShopTimes } from './taskTimes.ts';

function looks(problem: ShopProblem, unit: Unit): string {
  const places = new Map(unit.tasks.map((task, i) => [task, i]));
  const tasks = unit.tasks.map((t) => {
    const { id: _, ...rest } = problem.tasks[t] as ShopTask;
    return rest;
  });
  const links = problem.links
    .filter((link) => places.has(link.from) || places.has(link.to))
    .map((link) => ({ ...link, from: places.get(link.from), to: places.get(link.to) }));
  const bursts = problem.bursts.map((burst, b) => {
    const leads = burst.members.filter(({ task }) => places.has(task)).map(({ task, lead }) => [places.get(task), lead]);
    const { within, wait } = burst;
    return places.has(burst.after) ? [{ within, wait, after: places.get(burst.after) }] : leads.length > 0 ? [b, leads] : null;
  });
  const ready = unit.ready === null ? null : { ...unit.ready, task: places.get(unit.ready.task) };
  const { omissionPrice, family, parent } = unit;
  return JSON.stringify([tasks, links, bursts.filter((burst) => burst !== null), ready, String(omissionPrice), family, parent]);
}

/** How a parent looks with all its children, who their own parent is and which burst is theirs left aside. */
function looksWithChildren(problem: ShopProblem, u: number): string {
  const unit = problem.units[u] as Unit;
  const children = problem.units
    .filter((child) => child.parent === u)
    .map((child) => looks({ ...problem, bursts: [] }, { ...child, parent: null }))
    .sort();
  return JSON.stringify([looks(problem, unit), children]);
}

function byLooks(units: readonly number[], look: (unit: number) => string): number[][] {
  const groups = new Map<string, number[]>();
  for (const unit of units) {
    const key = look(unit);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(unit);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

/** Alike units begin in the order of their numbers, planned ones first. */
export function orderTwins(draft: ModelDraft, problem: ShopProblem, times: ShopTimes): void {
  const parents = new Set(problem.units.flatMap((unit) => unit.parent ?? []));
  const all = problem.units.map((_, u) => u);
  const trays = byLooks(
    all.filter((u) => !parents.has(u)),
    (u) => looks(problem, problem.units[u] as Unit),
  );
  const batches = byLooks(
    all.filter((u) => parents.has(u)),
    (u) => looksWithChildren(problem, u),
  );
  for (const group of [...trays, ...batches]) {
    group.slice(1).forEach((later, i) => {
      const earlier = group[i] as number;
      const first = times.tasks[problem.units[earlier]?.tasks[0] ?? -1];
      const second = times.tasks[problem.units[later]?.tasks[0] ?? -1];
      if (first === undefined || second === undefined) return;
      for (const literal of first.present) draft.anyOf([literal], second.present);
      draft.lag(first.start, second.start, 0, problem.horizon, [...first.present, ...second.present]);
    });
  }
}
