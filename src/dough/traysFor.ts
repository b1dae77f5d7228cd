// How many trays an order needs. Used by the compiler, the judge and the sheet.

/**
 * Trays for so many pieces, the last one counted as full.
 * @param pieces whole pieces, 0 or more
 * @param piecesPerTray whole pieces on a full tray, 1 or more
 */
export function traysFor(pieces: number, piecesPerTray: number): number {
  const onLastTray = pieces % piecesPerTray;
  const fullTrays = (pieces - onLastTray) / piecesPerTray;
  return onLastTray === 0 ? fullTrays : fullTrays + 1;
}
