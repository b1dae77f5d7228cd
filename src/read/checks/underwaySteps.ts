// NOT_UNDER_WAY, STEP_NOT_THERE, STEP_TWICE, STEP_NOT_TOLD: every step of the batches and trays under way is told of once, and no
// other is.
import type { UnderwayTask } from '../../model/underway.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Entry, Parts, UnderwayParts } from '../parts.ts';
import { shown } from '../shown.ts';
import { allChains, type Chain, type ChainStep, underwayChains } from './underwayChains.ts';

function stepName({ step, ordinal }: Pick<UnderwayTask, 'step' | 'ordinal'>): string {
  return ordinal === 1 ? step : `${step} ${ordinal}`;
}

function chainErrors(chain: Chain, isWhole: boolean): readonly CodedError[] {
  return chain.steps.flatMap(({ step, ordinal, told }: ChainStep) => {
    const name = stepName({ step: step.do, ordinal });
    const twice = told.slice(1).map(({ at }) => {
      const says = `The ${name} of ${chain.name} stands in the day so far more than once.`;
      return inputErrorAt('STEP_TWICE', at, says, 'Leave one of them; number a step that comes twice with ordinal.');
    });
    if (told.length > 0 || !isWhole) return twice;
    const says = `The day so far does not say how far the ${name} of ${chain.name} is.`;
    return [inputErrorAt('STEP_NOT_TOLD', chain.at, says, 'Add it to tasks, as ended, begun or planned.')];
  });
}

type Batches = ReadonlyMap<string, { readonly dough: string; readonly productOf: ReadonlyMap<string, string> }>;

/** Why a step belongs to nothing that is under way; undefined when it does, or when a broken batch may be its own. */
function strayError({ at, value }: Entry<UnderwayTask>, batches: Batches, broken: ReadonlySet<string>): CodedError | undefined {
  const { batch, tray } = value;
  const name = stepName(value);
  const listed = batches.get(batch);
  if (listed === undefined) {
    if (broken.has(batch)) return undefined;
    const says = `The ${name} is of the batch ${shown(batch)}, which is not among the batches under way.`;
    return inputErrorAt('NOT_UNDER_WAY', `${at}/batch`, says, 'List the batch, or take out the step.');
  }
  if (tray === undefined || listed.productOf.has(tray)) return undefined;
  const says = `The ${name} is of the tray ${shown(tray)}, which batch ${shown(batch)} does not have.`;
  return inputErrorAt('NOT_UNDER_WAY', `${at}/tray`, says, 'List the tray in its batch, or take out the step.');
}

/** Steps of nothing that is under way, and steps that their dough or product does not have. */
function strayErrors({ doughs, products }: Parts, underway: UnderwayParts, chains: readonly Chain[]): readonly CodedError[] {
  const batches: Batches = new Map(
    underway.batches.sound.map(({ value: { id, dough, trays } }) => [
      id,
      { dough, productOf: new Map(trays.map((tray) => [tray.id, tray.product])) },
    ]),
  );
  const broken = new Set(underway.batches.ids);
  const told = new Set(chains.flatMap(({ steps }) => steps.flatMap((step) => step.told.map(({ at }) => at))));
  // Only what is sound is known to lack a step.
  const makers = new Set([...doughs.sound, ...products.sound].map(({ value }) => value.id));
  return underway.tasks.sound.flatMap((entry) => {
    const stray = strayError(entry, batches, broken);
    if (stray !== undefined || told.has(entry.at)) return stray ?? [];
    const { batch, tray } = entry.value;
    const listed = batches.get(batch);
    const maker = tray === undefined ? listed?.dough : listed?.productOf.get(tray);
    if (maker === undefined || !makers.has(maker)) return [];
    const says = `A ${stepName(entry.value)} of ${shown(tray ?? batch)} stands in the day so far; ${shown(maker)} has no such step.`;
    return [inputErrorAt('STEP_NOT_THERE', `${entry.at}/step`, says, 'Take it out, or correct step, ordinal or tray.')];
  });
}

export function underwaySteps(parts: Parts): readonly CodedError[] {
  const { underway } = parts;
  if (underway === undefined) return [];
  const chains = allChains(underwayChains(parts));
  return [...strayErrors(parts, underway, chains), ...chains.flatMap((chain) => chainErrors(chain, underway.tasks.isWhole))];
}
