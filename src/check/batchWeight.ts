// What a batch weighs in the bowl, and the largest batch a dough may have, counted afresh from the scenario.
import type { Dough, Scenario } from '../model/scenario.ts';
import type { BatchRun } from './judgedDay.ts';

/** A milligram: far below what any scale in a bakery shows, far above what adding up rounds away. */
export const KG_TOLERANCE = 1e-6;

/** Sum over its trays of piecesPerTray x pieceG / 1000, over 1 - lossPercent / 100. */
export function batchKg(batch: BatchRun): number {
  const onTraysKg = batch.trays.reduce((sum, { product }) => sum + (product.piecesPerTray * product.pieceG) / 1000, 0);
  return onTraysKg / (1 - batch.dough.lossPercent / 100);
}

/** The smaller of maxBatchKg and the largest bowl, whichever are given; bowls count only when the dough is mixed. */
export function largestBatchKg(scenario: Scenario, dough: Dough): number | undefined {
  const { mixers } = scenario.equipment;
  const isMixed = dough.steps.some((step) => step.do === 'mix');
  const bowls = isMixed && mixers !== undefined ? mixers.map(({ bowlKg }) => bowlKg) : [];
  const limits = [
    ...(dough.maxBatchKg === undefined ? [] : [dough.maxBatchKg]),
    ...(bowls.length === 0 ? [] : [Math.max(...bowls)]),
  ];
  return limits.length === 0 ? undefined : Math.min(...limits);
}
