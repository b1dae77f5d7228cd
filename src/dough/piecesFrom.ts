// How many whole pieces a mass of dough gives. Used where a dough is scaled out.

/** Share of the dough by which a last piece may be short and still be put down to rounding of decimals. */
const ROUNDING = 1e-9;

/**
 * Whole pieces of pieceG in doughG; what is left over is less than one piece.
 * @param doughG dough in grams, 0 or more
 * @param pieceG dough in one piece in grams, above 0
 */
export function piecesFrom(doughG: number, pieceG: number): number {
  const nearest = Math.round(doughG / pieceG);
  // 0.3 g at 0.1 g a piece divides to 2.9999999999999996: three pieces, not two.
  if (Math.abs(nearest * pieceG - doughG) <= ROUNDING * doughG) return nearest;
  return Math.floor(doughG / pieceG);
}
