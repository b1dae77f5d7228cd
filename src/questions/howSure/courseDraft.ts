// A course while it is put together: moments, draws and places are added one by one, waits between them as they are found.
import type { Course, Draw, Lag, Moment, Piece, SpreadStep, TrayCourse, Use } from './course.ts';

/** No wait, the same every morning. */
export function at(from: number, plus = 0): Lag {
  return { from, minutes: 0, draw: -1, plus };
}

type MomentDraft = Moment & { readonly after: Lag[]; readonly canWaitUntil: Lag[] };

export class CourseDraft {
  readonly now: number;
  private readonly moments: MomentDraft[] = [];
  private readonly draws: Draw[] = [];
  private readonly drawByKey = new Map<string, number>();
  private chances = 0;
  private readonly pools: { id: string; room: number }[] = [];
  private readonly poolByKey = new Map<string, number>();
  private readonly uses: Use[] = [];
  private readonly trays: TrayCourse[] = [];
  private readonly piecesOf = new Map<string, { readonly planned: number; readonly piece: Piece }[]>();

  constructor(now: number) {
    this.now = now;
  }

  addMoment(planned: number, keeps: 'sheet' | 'follows'): number {
    this.moments.push({ planned, keeps: planned < this.now ? 'past' : keeps, after: [], canWaitUntil: [] });
    return this.moments.length - 1;
  }

  plannedAt(moment: number): number {
    return this.moment(moment).planned;
  }

  comesAfter(moment: number, lag: Lag): void {
    this.moment(moment).after.push(lag);
  }

  cannotWaitBeyond(moment: number, lag: Lag): void {
    this.moment(moment).canWaitUntil.push(lag);
  }

  private moment(index: number): MomentDraft {
    const found = this.moments[index];
    if (found === undefined) throw new RangeError(`no moment ${index}`);
    return found;
  }

  addChance(): number {
    this.chances += 1;
    return this.chances - 1;
  }

  /** A draw; -1 when its spread is nothing. Equal ones of one chance are one. */
  addDraw(chance: number, spreadPercent: number, step: SpreadStep, of: string): number {
    if (spreadPercent === 0) return -1;
    const key = `${chance} ${spreadPercent} ${step} ${of}`;
    const known = this.drawByKey.get(key);
    if (known !== undefined) return known;
    this.draws.push({ chance, spread: spreadPercent / 100, step, of });
    this.drawByKey.set(key, this.draws.length - 1);
    return this.draws.length - 1;
  }

  /** The pool of a place, made when it is first asked for. */
  poolFor(id: string, room: number): number {
    const known = this.poolByKey.get(id);
    if (known !== undefined) return known;
    this.pools.push({ id, room });
    this.poolByKey.set(id, this.pools.length - 1);
    return this.pools.length - 1;
  }

  addUse(use: Use): void {
    this.uses.push(use);
  }

  addTray(tray: TrayCourse): void {
    this.trays.push(tray);
  }

  /** A piece of work of a person. */
  addPiece(person: string, planned: number, piece: Piece): void {
    const own = this.piecesOf.get(person);
    if (own === undefined) this.piecesOf.set(person, [{ planned, piece }]);
    else own.push({ planned, piece });
  }

  /** The course. `untilOf`: the minute at which the hours of each person end. */
  settle(untilOf: ReadonlyMap<string, number>): Course {
    const people = [...this.piecesOf].map(([id, own]) => {
      const pieces = [...own].sort((a, b) => a.planned - b.planned).map(({ piece }) => piece);
      return { id, untilMinute: untilOf.get(id) ?? Number.POSITIVE_INFINITY, pieces };
    });
    const { moments, draws, chances, pools, uses, trays, now } = this;
    return { moments, draws, chances, pools, uses, trays, people, now };
  }
}
