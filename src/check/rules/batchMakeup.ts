// BATCH_MAKEUP: dough of each tray = dough of its batch; a tray names one batch and one product; every batch has a tray;
// kg of a batch <= its largest batch; batches stated are the batches planned. Of a day under way: trays and batches known before
// keep batch, product and dough; a batch that has begun takes no other tray.
import type { PlanBatch } from '../../model/plan.ts';
import { batchKg, KG_TOLERANCE, largestBatchKg } from '../batchWeight.ts';
import type { Finding } from '../finding.ts';
import type { BatchRun, JudgedDay } from '../judgedDay.ts';

/** Stated weights may be rounded to a gram. */
const STATED_KG_TOLERANCE = 0.001;

function firstTasks(batch: BatchRun): readonly string[] {
  return batch.runs.flatMap((run) => run?.named.id ?? []).slice(0, 1);
}

function batchFindings(day: JudgedDay, batch: BatchRun): readonly Finding[] {
  const taskIds = firstTasks(batch);
  const strangers = batch.trays.filter((tray) => tray.product.dough !== batch.dough.id);
  const kg = batchKg(batch);
  const largestKg = largestBatchKg(day.scenario, batch.dough);
  const isTooHeavy = largestKg !== undefined && kg > largestKg + KG_TOLERANCE;
  return [
    ...strangers.map((tray) => ({
      says: `Tray ${tray.id} is of dough ${tray.product.dough}, its batch ${batch.id} of dough ${batch.dough.id}.`,
      taskIds: tray.runs.flatMap((run) => run?.named.id ?? []).slice(0, 1),
    })),
    ...(batch.trays.length === 0 ? [{ says: `Batch ${batch.id} is mixed and no tray is made of it.`, taskIds }] : []),
    ...(isTooHeavy
      ? [
          {
            says: `Batch ${batch.id} weighs ${kg.toFixed(3)} kg, ${(kg - largestKg).toFixed(3)} kg more than the largest batch of ${batch.dough.id}, ${largestKg} kg.`,
            taskIds,
          },
        ]
      : []),
  ];
}

/** Trays whose tasks name no batch, or two batches, or two products; batches of which no tray says the dough. */
function nameFindings(day: JudgedDay): readonly Finding[] {
  const named = new Map<string, { batches: Set<string>; products: Set<string>; taskId: string }>();
  for (const { id, task } of day.tasks) {
    if (task.tray === undefined) continue;
    const entry = named.get(task.tray) ?? { batches: new Set(), products: new Set(), taskId: id };
    if (task.batch !== undefined) entry.batches.add(task.batch);
    if (task.product !== undefined) entry.products.add(task.product);
    named.set(task.tray, entry);
  }
  const twice = [...named].flatMap(([tray, { batches, products, taskId }]) => [
    ...(batches.size > 1
      ? [{ says: `Tray ${tray} is in more than one batch: ${[...batches].join(', ')}.`, taskIds: [taskId] }]
      : []),
    ...(products.size > 1
      ? [{ says: `Tray ${tray} is of more than one product: ${[...products].join(', ')}.`, taskIds: [taskId] }]
      : []),
  ]);
  const homeless = day.trays
    .filter(({ batch }) => batch === undefined)
    .map(({ id }) => ({ says: `Nothing says which batch tray ${id} is made of.`, taskIds: [named.get(id)?.taskId ?? id] }));
  const inBatches = new Set([...day.batches.map(({ id }) => id), ...[...named.values()].flatMap(({ batches }) => [...batches])]);
  const unmade = day.tasks
    .filter(({ task }) => task.tray === undefined && task.batch !== undefined && !inBatches.has(task.batch))
    .map(({ id, task }) => ({ says: `Batch ${task.batch} has ${id} and no tray is made of it.`, taskIds: [id] }));
  return [...twice, ...homeless, ...unmade];
}

function statedFindings(stated: readonly PlanBatch[], planned: readonly BatchRun[]): readonly Finding[] {
  const byId = new Map(stated.map((batch) => [batch.id, batch]));
  const plannedIds = new Set(planned.map(({ id }) => id));
  const unplanned = stated.filter(({ id }) => !plannedIds.has(id));
  return [
    ...unplanned.map(({ id }) => ({ says: `Batch ${id} is listed and not planned.`, taskIds: [] })),
    ...planned.flatMap((batch) => {
      const taskIds = firstTasks(batch);
      const listed = byId.get(batch.id);
      if (listed === undefined) return [{ says: `Batch ${batch.id} is planned and not listed.`, taskIds }];
      const own = batch.trays.map(({ id }) => id).sort();
      const theirs = listed.trays.map(({ id }) => id).sort();
      const productOf = new Map(batch.trays.map((tray) => [tray.id, tray.product.id]));
      const areSame = own.join() === theirs.join() && listed.trays.every(({ id, product }) => productOf.get(id) === product);
      const kg = batchKg(batch);
      const says = `Batch ${batch.id} is listed with ${listed.kg} kg and weighs ${kg.toFixed(3)} kg.`;
      return [
        ...(areSame ? [] : [{ says: `Batch ${batch.id} is listed with the trays ${theirs}; planned are ${own}.`, taskIds }]),
        ...(Math.abs(listed.kg - kg) > STATED_KG_TOLERANCE ? [{ says, taskIds }] : []),
      ];
    }),
  ];
}

/** Trays and batches that were dealt before the day was under way, and are otherwise in the plan. */
function dealtFindings(day: JudgedDay): readonly Finding[] {
  const { underway } = day.scenario;
  if (underway === undefined) return [];
  const dealt = new Map(underway.batches.map((batch) => [batch.id, batch]));
  const dealtTrays = new Map(
    underway.batches.flatMap((batch) => batch.trays.map((tray) => [tray.id, { batch: batch.id, product: tray.product }])),
  );
  const hasBegun = new Set(underway.tasks.filter(({ state }) => state !== 'planned').map(({ batch }) => batch));
  const ofBatches = day.batches.flatMap((batch) => {
    const was = dealt.get(batch.id);
    if (was === undefined || was.dough === batch.dough.id) return [];
    return [
      { says: `Batch ${batch.id} is of dough ${batch.dough.id}; it was dealt as ${was.dough}.`, taskIds: firstTasks(batch) },
    ];
  });
  const ofTrays = day.trays.flatMap((tray) => {
    const was = dealtTrays.get(tray.id);
    const taskIds = tray.runs.flatMap((run) => run?.named.id ?? []).slice(0, 1);
    if (was === undefined) {
      if (tray.batch === undefined || !hasBegun.has(tray.batch)) return [];
      return [{ says: `Tray ${tray.id} is put in batch ${tray.batch}, which has begun without it.`, taskIds }];
    }
    return [
      ...(tray.batch === undefined || tray.batch === was.batch
        ? []
        : [{ says: `Tray ${tray.id} is of batch ${was.batch}; the plan puts it in batch ${tray.batch}.`, taskIds }]),
      ...(tray.product.id === was.product
        ? []
        : [{ says: `Tray ${tray.id} is of ${was.product}; the plan makes it ${tray.product.id}.`, taskIds }]),
    ];
  });
  return [...ofBatches, ...ofTrays];
}

export function batchMakeup(day: JudgedDay): readonly Finding[] {
  return [
    ...day.batches.flatMap((batch) => batchFindings(day, batch)),
    ...nameFindings(day),
    ...dealtFindings(day),
    ...(day.plan.batches === undefined ? [] : statedFindings(day.plan.batches, day.batches)),
  ];
}
