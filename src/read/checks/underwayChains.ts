// The steps of each batch and tray of a day under way, one after the other, each with what is told of it. For its checks.
import type { BatchStep, StepKind, TrayStep } from '../../model/steps.ts';
import type { UnderwayTask } from '../../model/underway.ts';
import type { Entry, Parts } from '../parts.ts';
import { shown } from '../shown.ts';

/** A step of a chain and every entry that tells of it, in the order of the file. */
export type ChainStep = {
  readonly step: BatchStep | TrayStep;
  readonly ordinal: number;
  readonly told: readonly Entry<UnderwayTask>[];
};

export type Chain = {
  /** Where the batch or tray is listed. */
  readonly at: string;
  /** As "tray "rye-1"". */
  readonly name: string;
  readonly steps: readonly ChainStep[];
};

/** `batch` is undefined when its dough is not sound. */
export type BatchChains = { readonly batch: Chain | undefined; readonly trays: readonly Chain[] };

/** One key for each step of a batch or tray. */
function chainKey(batch: string, tray: string | undefined, step: StepKind, ordinal: number): string {
  return JSON.stringify([batch, tray ?? null, step, ordinal]);
}

function chainSteps(
  steps: readonly (BatchStep | TrayStep)[],
  batch: string,
  tray: string | undefined,
  toldByKey: ReadonlyMap<string, readonly Entry<UnderwayTask>[]>,
): readonly ChainStep[] {
  return steps.map((step, index) => {
    const ordinal = steps.slice(0, index + 1).filter((other) => other.do === step.do).length;
    return { step, ordinal, told: toldByKey.get(chainKey(batch, tray, step.do, ordinal)) ?? [] };
  });
}

function tellings(tasks: readonly Entry<UnderwayTask>[]): ReadonlyMap<string, readonly Entry<UnderwayTask>[]> {
  const byKey = new Map<string, Entry<UnderwayTask>[]>();
  for (const entry of tasks) {
    const { batch, tray, step, ordinal } = entry.value;
    const key = chainKey(batch, tray, step, ordinal);
    const own = byKey.get(key);
    if (own === undefined) byKey.set(key, [entry]);
    else own.push(entry);
  }
  return byKey;
}

/** Chains of the sound batches, and of their trays whose product is sound. */
export function underwayChains({ underway, doughs, products }: Parts): readonly BatchChains[] {
  if (underway === undefined) return [];
  const told = tellings(underway.tasks.sound);
  const doughById = new Map(doughs.sound.map(({ value }) => [value.id, value]));
  const productById = new Map(products.sound.map(({ value }) => [value.id, value]));
  return underway.batches.sound.map(({ at, value: { id, dough, trays } }) => {
    const steps = doughById.get(dough)?.steps;
    return {
      batch: steps === undefined ? undefined : { at, name: `batch ${shown(id)}`, steps: chainSteps(steps, id, undefined, told) },
      trays: trays.flatMap((tray, index) => {
        const own = productById.get(tray.product)?.steps;
        if (own === undefined) return [];
        const place = `${at}/trays/${index}`;
        return [{ at: place, name: `tray ${shown(tray.id)}`, steps: chainSteps(own, id, tray.id, told) }];
      }),
    };
  });
}

/** All of them in one list, batches and trays. */
export function allChains(chains: readonly BatchChains[]): readonly Chain[] {
  return chains.flatMap(({ batch, trays }) => (batch === undefined ? trays : [batch, ...trays]));
}
