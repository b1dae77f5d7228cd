// How many pieces of an added order would fit at most, in whole trays: found by planning, limited by proof. Used by fit.
import { traysFor } from '../../dough/traysFor.ts';
import type { Most } from '../../model/fitAnswer.ts';
import type { Scenario } from '../../model/scenario.ts';
import { fullByWork, isFullWords } from '../capacity/fullWords.ts';
import { overfull } from '../capacity/workLimit.ts';
import type { Variant } from '../whatWouldFit/ladder.ts';
import { productWords } from '../whatWouldFit/orderWords.ts';
import type { Trial } from '../whatWouldFit/trial.ts';
import type { AddedOrder } from './addedTo.ts';

/** Trays of a day at most, as many as a scenario may order. */
const MOST_TRAYS = 2000;

type WorkLimit = { readonly rung: number; readonly because: string };

/** Rung k: the pieces that fill k more trays than the other orders of the product take. */
export class MostPieces {
  private readonly after: Scenario;
  private readonly order: AddedOrder;
  private readonly trial: Trial;
  private readonly perTray: number;
  /** Room on the last tray of the other orders. */
  private readonly spare: number;
  private most: number;
  private low: number;
  /** Not found to work, or proved not to. */
  private high: number;
  private proved: number | null = null;
  private readonly byWork: WorkLimit | null;

  /** `fits`: whether the order fits as it is asked for; `isImpossible`: whether it is proved that it does not. */
  constructor(
    after: Scenario,
    order: AddedOrder,
    trial: Trial,
    known: { readonly fits: boolean; readonly isImpossible: boolean },
  ) {
    this.after = after;
    this.order = order;
    this.trial = trial;
    this.perTray = after.products.find(({ id }) => id === order.product)?.piecesPerTray ?? 1;
    const others = after.orders.reduce(
      (sum, { product, pieces }) => sum + (product === order.product ? pieces : 0),
      -order.pieces,
    );
    this.spare = traysFor(others, this.perTray) * this.perTray - others;
    const asked = this.rungOf(order.pieces);
    this.most = known.fits ? order.pieces : 0;
    this.low = known.fits ? asked - (this.piecesOf(asked) === order.pieces ? 0 : 1) : this.noneRung();
    this.byWork = this.workLimit();
    this.high = Math.min(this.topRung(), (this.byWork?.rung ?? Number.POSITIVE_INFINITY) + 1);
    if (known.fits) return;
    this.high = Math.min(this.high, asked);
    if (known.isImpossible) this.proved = asked;
  }

  private piecesOf(rung: number): number {
    return this.spare + rung * this.perTray;
  }

  private rungOf(pieces: number): number {
    return Math.max(0, Math.ceil((pieces - this.spare) / this.perTray));
  }

  /** The rung below the first that has any pieces. */
  private noneRung(): number {
    return this.spare > 0 ? -1 : 0;
  }

  private topRung(): number {
    const others = this.after.products.reduce((sum, { id, piecesPerTray }) => {
      const pieces = this.after.orders.reduce((all, { product, pieces: each }) => all + (product === id ? each : 0), 0);
      return sum + (id === this.order.product ? 0 : traysFor(pieces, piecesPerTray));
    }, 0);
    return MOST_TRAYS - others + 1;
  }

  private withPieces(rung: number): Scenario {
    const { index } = this.order;
    const orders = this.after.orders.map((order, at) => (at === index ? { ...order, pieces: this.piecesOf(rung) } : order));
    return { ...this.after, orders };
  }

  /** The highest rung no argument by work rules out. Work before now is behind a day under way, and not known to the argument. */
  private workLimit(): WorkLimit | null {
    if (!this.trial.isWhole || this.after.underway !== undefined) return null;
    let works = this.noneRung();
    let fails = this.topRung();
    let full = overfull(this.withPieces(fails));
    if (full === null) return null;
    while (fails - works > 1) {
      const middle = Math.floor((works + fails) / 2);
      const found = overfull(this.withPieces(middle));
      if (found === null) works = middle;
      else [fails, full] = [middle, found];
    }
    return { rung: works, because: isFullWords(fullByWork(full.kind)) };
  }

  private async ask(rung: number): Promise<void> {
    const pieces = this.piecesOf(rung);
    const variant: Variant = {
      amount: pieces,
      operations: [{ op: 'replace', path: `/orders/${this.order.index}/pieces`, value: pieces }],
      does: '',
      earlierBy: 0,
    };
    const { is } = await this.trial.decide(variant);
    if (is === 'possible') {
      this.low = rung;
      this.most = Math.max(this.most, pieces);
      return;
    }
    this.high = rung;
    if (is === 'impossible') this.proved = Math.min(this.proved ?? rung, rung);
  }

  /** Upwards in steps that double, then by halves. */
  async search(): Promise<Most> {
    for (let step = 1; this.low + 1 < this.high && this.trial.hasTime(); step *= 2) {
      const before = this.high;
      await this.ask(Math.min(this.low + step, this.high - 1));
      if (this.high < before) break;
    }
    while (this.high - this.low > 1 && this.trial.hasTime()) await this.ask(Math.floor((this.low + this.high) / 2));
    return this.answer();
  }

  private answer(): Most {
    const { product, pieces, readyBy, index } = this.order;
    const isSearched =
      this.proved !== null && this.trial.isWhole && this.proved <= (this.byWork?.rung ?? Number.POSITIVE_INFINITY);
    const byWork = this.byWork === null ? null : Math.max(0, this.byWork.rung < 0 ? 0 : this.piecesOf(this.byWork.rung));
    const bySearch = isSearched && this.proved !== null ? this.searchLimit(this.proved) : null;
    const limit = bySearch ?? byWork;
    const limitPieces = limit === null ? null : Math.max(limit, this.most);
    const proof = limit === null ? null : bySearch === null ? 'work' : 'search';
    const isExact = limitPieces === this.most;
    return {
      number: index + 1,
      product,
      pieces,
      readyBy,
      mostPieces: this.most,
      limitPieces,
      proof,
      isExact,
      says: this.says(limitPieces, proof, isExact),
    };
  }

  /** The pieces of one rung less than the one proved not to work. */
  private searchLimit(proved: number): number {
    return proved - 1 <= this.noneRung() && this.spare === 0 ? 0 : Math.max(0, this.piecesOf(proved - 1));
  }

  private says(limit: number | null, proof: Most['proof'], isExact: boolean): string {
    const { readyBy, product } = this.order;
    const name = productWords(this.after, product);
    const found = this.most === 0 ? `No ${name} more was found to fit by ${readyBy}` : `${this.most} ${name} fit by ${readyBy}`;
    const why = proof === 'work' ? ` (${this.byWork?.because ?? ''})` : '';
    if (isExact && this.most === 0) return `No ${name} more fit by ${readyBy}, proved${why}.`;
    if (isExact) return `${found}, and no more, proved${why}.`;
    if (limit === null) return `${found}; ${this.most === 0 ? 'that none does' : 'that no more do'} is not proved.`;
    return `${found}; more than ${limit} do not, proved${why}; in between is not known.`;
  }
}
