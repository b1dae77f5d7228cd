// NO_MIXER, NO_BATCH_FITS: a dough that is mixed has a bowl, and one tray of each product fits into the largest batch.
import { batchKg } from '../../dough/batchKg.ts';
import { trayDoughKg } from '../../dough/trayDoughKg.ts';
import type { Dough, Product } from '../../model/scenario.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Entry, Parts } from '../parts.ts';
import { shown } from '../shown.ts';

type Largest = { readonly kg: number; readonly what: string };

function isMixed(dough: Dough): boolean {
  return dough.steps.some((step) => step.do === 'mix');
}

function largestBatch(dough: Dough, { mixers }: Parts): Largest | undefined {
  const limits: Largest[] = [];
  if (dough.maxBatchKg !== undefined) limits.push({ kg: dough.maxBatchKg, what: 'maxBatchKg of the dough' });
  if (isMixed(dough) && mixers?.isWhole === true && mixers.sound.length > 0) {
    limits.push({ kg: Math.max(...mixers.sound.map(({ value }) => value.bowlKg)), what: 'the largest bowl' });
  }
  return limits.sort((a, b) => a.kg - b.kg)[0];
}

function trayError({ at, value }: Entry<Product>, dough: Dough, parts: Parts): readonly CodedError[] {
  const largest = largestBatch(dough, parts);
  const kg = batchKg([trayDoughKg(value)], dough.lossPercent);
  if (largest === undefined || kg <= largest.kg) return [];
  const sum = `${value.piecesPerTray} pieces of ${value.pieceG} g${dough.lossPercent > 0 ? ` and ${dough.lossPercent} % loss` : ''}`;
  const says = `One tray of product ${shown(value.id)} takes ${kg.toFixed(2)} kg of dough (${sum}); ${largest.what} holds ${largest.kg} kg.`;
  const doThis = 'Put fewer pieces on a tray, correct pieceG (grams of one piece), or raise the limit.';
  return [inputErrorAt('NO_BATCH_FITS', `${at}/piecesPerTray`, says, doThis)];
}

export function batchesFit(parts: Parts): readonly CodedError[] {
  const { mixers, doughs, products } = parts;
  const doughById = new Map(doughs.sound.map((entry) => [entry.value.id, entry.value]));
  const hasNoMixer = mixers?.isWhole === true && mixers.sound.length === 0;
  const unmixed = hasNoMixer ? doughs.sound.filter(({ value }) => isMixed(value)) : [];
  const trays = products.sound.flatMap((product) => {
    const dough = doughById.get(product.value.dough);
    return dough === undefined ? [] : trayError(product, dough, parts);
  });
  const noMixer = unmixed.map(({ at, value }) => {
    const says = `Dough ${shown(value.id)} is mixed, and the list of mixers is empty.`;
    const doThis = 'Add a mixer; or take the key mixers out, and bowls never limit the day.';
    return inputErrorAt('NO_MIXER', `${at}/steps/${value.steps.findIndex((step) => step.do === 'mix')}`, says, doThis);
  });
  return [...noMixer, ...trays];
}
