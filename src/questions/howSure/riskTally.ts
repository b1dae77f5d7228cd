// Counts how often something went wrong, and by how many minutes. Used by morningTally.ts.
import type { Risk } from '../../model/howSure.ts';
import { wilson } from './wilson.ts';

export class RiskTally {
  private readonly counts: Int32Array;
  private readonly minutes: Float64Array;

  constructor(things: number) {
    this.counts = new Int32Array(things);
    this.minutes = new Float64Array(things);
  }

  add(thing: number, minutes: number): void {
    this.counts[thing] = (this.counts[thing] ?? 0) + 1;
    this.minutes[thing] = (this.minutes[thing] ?? 0) + minutes;
  }

  riskOf(thing: number, mornings: number): Risk {
    const count = this.counts[thing] ?? 0;
    const mean = count === 0 ? 0 : (this.minutes[thing] ?? 0) / count;
    return { ...wilson(count, mornings), minutes: Math.round(mean * 10) / 10 };
  }
}
