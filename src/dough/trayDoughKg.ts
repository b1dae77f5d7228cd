// Dough on one full tray of a product. Used wherever trays become kilograms.

/**
 * Kilograms of dough on one full tray: pieces x grams a piece / 1000.
 * @param product.pieceG dough in one piece, grams, above 0
 * @param product.piecesPerTray whole pieces, 1 or more
 */
export function trayDoughKg(product: { readonly pieceG: number; readonly piecesPerTray: number }): number {
  return (product.piecesPerTray * product.pieceG) / 1000;
}
