// The trays and batches a plan speaks of, each with its tasks paired to its steps. Every other part of the judge starts here.
import type { Dough, Product, Scenario } from '../model/scenario.ts';
import type { BatchStep, TrayStep } from '../model/steps.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import type { NamedTask } from './nameTasks.ts';
import { type Pairing, pairSteps } from './pairSteps.ts';

export type PlannedTray = Pairing<TrayStep> & {
  readonly id: string;
  readonly product: Product;
  /** Undefined when no task of the tray and no stated batch says it. */
  readonly batch: string | undefined;
};

export type PlannedBatch = Pairing<BatchStep> & {
  readonly id: string;
  readonly dough: Dough;
  readonly trays: readonly PlannedTray[];
};

function grouped(tasks: readonly NamedTask[], nameOf: (named: NamedTask) => string | undefined): Map<string, NamedTask[]> {
  const groups = new Map<string, NamedTask[]>();
  for (const named of tasks) {
    const name = nameOf(named);
    if (name === undefined) continue;
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [named]);
    else group.push(named);
  }
  return groups;
}

/** Trays with at least one task, of a product the scenario knows. The first task that says it gives product and batch. */
export function plannedTrays(scenario: Scenario, plan: WrittenPlan, tasks: readonly NamedTask[]): readonly PlannedTray[] {
  const productById = new Map(scenario.products.map((product) => [product.id, product]));
  const stated = new Map(
    (plan.batches ?? []).flatMap((batch) => batch.trays.map((tray) => [tray.id, { product: tray.product, batch: batch.id }])),
  );
  return [...grouped(tasks, ({ task }) => task.tray)].flatMap(([id, own]) => {
    const productId = own.find(({ task }) => task.product !== undefined)?.task.product ?? stated.get(id)?.product;
    const product = productId === undefined ? undefined : productById.get(productId);
    if (product === undefined) return [];
    const batch = own.find(({ task }) => task.batch !== undefined)?.task.batch ?? stated.get(id)?.batch;
    return [{ id, product, batch, ...pairSteps(product.steps, own) }];
  });
}

/** Batches with at least one task or tray, whose dough is known: the stated dough, or that of the first tray. */
export function plannedBatches(
  scenario: Scenario,
  plan: WrittenPlan,
  tasks: readonly NamedTask[],
  trays: readonly PlannedTray[],
): readonly PlannedBatch[] {
  const doughById = new Map(scenario.doughs.map((dough) => [dough.id, dough]));
  const statedDough = new Map((plan.batches ?? []).map((batch) => [batch.id, batch.dough]));
  const tasksOf = grouped(tasks, ({ task }) => (task.tray === undefined ? task.batch : undefined));
  const traysOf = new Map<string, PlannedTray[]>();
  for (const tray of trays) {
    if (tray.batch === undefined) continue;
    const own = traysOf.get(tray.batch);
    if (own === undefined) traysOf.set(tray.batch, [tray]);
    else own.push(tray);
  }
  return [...new Set([...tasksOf.keys(), ...traysOf.keys()])].flatMap((id) => {
    const own = traysOf.get(id) ?? [];
    const doughId = statedDough.get(id) ?? own[0]?.product.dough;
    const dough = doughId === undefined ? undefined : doughById.get(doughId);
    return dough === undefined ? [] : [{ id, dough, trays: own, ...pairSteps(dough.steps, tasksOf.get(id) ?? []) }];
  });
}
