// Which kind of work a lane does next while units are left out: each kind has the share of the rounds that what it has gained a
// round of late earns (adaptive operator choice: Ropke and Pisinger 2006, Transportation Science 40). Used by lane.ts.
import type { Random } from './random.ts';

/** Share of the rounds that is dealt out evenly, whatever has gained most. */
const EVEN = 0.3;

/** How much of what a kind has gained, and of the rounds it took, still counts after its next turn. */
const MEMORY = 0.85;

type Tally = { gain: number; rounds: number; turns: number };

export class Operators<Kind extends string> {
  private readonly random: Random;
  private readonly records = new Map<Kind, Tally>();

  constructor(random: Random) {
    this.random = random;
  }

  /** One of the kinds, at least one. `least`: shares of the rounds that some have whatever they gain, in all at most 1. */
  draw(kinds: readonly Kind[], least?: Readonly<Partial<Record<Kind, number>>>): Kind {
    const rates = kinds.map((kind) => this.rateOf(kind));
    const sum = rates.reduce((a, b) => a + b, 0);
    const rest = 1 - kinds.reduce((a, kind) => a + (least?.[kind] ?? 0), 0);
    const shares = kinds.map((kind, k) => {
      const earned = sum > 0 ? (rates[k] as number) / sum : 1 / kinds.length;
      const share = (least?.[kind] ?? 0) + rest * (EVEN / kinds.length + (1 - EVEN) * earned);
      const { rounds, turns } = this.recordOf(kind);
      return turns > 0 ? (share * turns) / rounds : 1;
    });
    let left = this.random.next() * shares.reduce((a, b) => a + b, 0);
    const at = shares.findIndex((share) => {
      left -= share;
      return left < 0;
    });
    return kinds[Math.max(0, at)] as Kind;
  }

  /** Says what a turn of a kind came to: the price before and after, and the rounds it took, 1 or more. */
  remember(kind: Kind, before: number, after: number, rounds: number): void {
    const record = this.recordOf(kind);
    record.gain = MEMORY * record.gain + Math.max(0, Math.log(before / after));
    record.rounds = MEMORY * record.rounds + rounds;
    record.turns = MEMORY * record.turns + 1;
  }

  private recordOf(kind: Kind): Tally {
    const known = this.records.get(kind) ?? { gain: 0, rounds: 0, turns: 0 };
    this.records.set(kind, known);
    return known;
  }

  private rateOf(kind: Kind): number {
    const { gain, rounds } = this.recordOf(kind);
    return rounds === 0 ? 0 : gain / rounds;
  }
}
