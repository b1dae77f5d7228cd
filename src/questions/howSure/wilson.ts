// A chance counted over mornings, with the interval it lies in. Used by howSure.ts.
import type { Chance } from '../../model/howSure.ts';

/** 97.5 % of the standard normal distribution lie below it: 95 % between it and its opposite. */
const Z = 1.959963984540054;

function toFourDecimals(share: number): number {
  return Math.round(share * 1e4) / 1e4;
}

/** The share that was counted, and the score interval around it for 95 % (Wilson 1927, Journal of the American Statistical Association 22). */
export function wilson(counted: number, mornings: number): Chance {
  const share = counted / mornings;
  const middle = share + Z ** 2 / (2 * mornings);
  const half = Z * Math.sqrt((share * (1 - share)) / mornings + Z ** 2 / (4 * mornings ** 2));
  const whole = 1 + Z ** 2 / mornings;
  const low = counted === 0 ? 0 : (middle - half) / whole;
  const high = counted === mornings ? 1 : (middle + half) / whole;
  return { chance: toFourDecimals(share), low: toFourDecimals(low), high: toFourDecimals(high) };
}
