// Dough to mix for the trays of one batch, loss included. Used by the compiler and the judge against bowls.

const MILLIGRAMS_PER_KG = 1_000_000;

/**
 * Kilograms in the bowl: sum of the trays' kilograms / (1 - lossPercent / 100), to the nearest milligram, so that
 * three trays of 0.1 kg are 0.3 kg and fit a bowl of 0.3 kg.
 * @param trayKgs kilograms of each tray, 0 or more
 * @param lossPercent share of the mixed dough that never reaches a tray, percent, 0 included to 100 excluded
 */
export function batchKg(trayKgs: readonly number[], lossPercent: number): number {
  const onTraysKg = trayKgs.reduce((sumKg, kg) => sumKg + kg, 0);
  return Math.round((onTraysKg / (1 - lossPercent / 100)) * MILLIGRAMS_PER_KG) / MILLIGRAMS_PER_KG;
}
