// Who is at work from when until when, morning by morning. A person does their pieces of work in the order of the plan; while
// one has to be waited for, later ones that are done before it can begin are done meanwhile. Used by mornings.ts.
import type { Course, Piece } from './course.ts';

/** How many waits of a person are remembered as time in which later pieces may be done. */
const WAITS = 4;

type Person = {
  /** When all work so far is done, and all but breaks. */
  readonly free: Float64Array;
  readonly workedUntil: Float64Array;
  /** Begin and end of the last waits, `WAITS` of them for each morning; those not in use end before they begin. */
  readonly waitFrom: Float64Array;
  readonly waitUntil: Float64Array;
  /** Which wait is overwritten next, and when the last of them ends: what is wanted later need not look. */
  readonly oldest: Uint8Array;
  readonly lastWaitUntil: Float64Array;
};

export class PeopleAtWork {
  private readonly block: number;
  private readonly people: readonly Person[];
  private readonly pieceAt = new Map<number, { readonly piece: Piece; readonly person: Person }>();

  constructor(course: Course, block: number) {
    this.block = block;
    this.people = course.people.map(({ pieces }) => {
      const person = {
        free: new Float64Array(block),
        workedUntil: new Float64Array(block),
        waitFrom: new Float64Array(block * WAITS),
        waitUntil: new Float64Array(block * WAITS),
        oldest: new Uint8Array(block),
        lastWaitUntil: new Float64Array(block),
      };
      for (const piece of pieces) this.pieceAt.set(piece.moment, { piece, person });
      return person;
    });
  }

  /** Nobody has done anything yet. */
  clear(): void {
    for (const { free, workedUntil, waitFrom, waitUntil, oldest, lastWaitUntil } of this.people) {
      free.fill(Number.NEGATIVE_INFINITY);
      workedUntil.fill(0);
      waitFrom.fill(0);
      waitUntil.fill(Number.NEGATIVE_INFINITY);
      oldest.fill(0);
      lastWaitUntil.fill(Number.NEGATIVE_INFINITY);
    }
  }

  /** When each person has done their last work, one for each morning. */
  workedUntil(person: number): Float64Array {
    const found = this.people[person];
    if (found === undefined) throw new RangeError(`no person ${person}`);
    return found.workedUntil;
  }

  /** Gives the person their next piece, wanted at these times; moves the times to when it is begun. */
  take(moment: number, times: Float64Array, factors: Float64Array): void {
    const found = this.pieceAt.get(moment);
    if (found === undefined) return;
    const { piece, person } = found;
    for (let i = 0; i < times.length; i++) {
      const minutes = piece.draw < 0 ? piece.minutes : piece.minutes * (factors[piece.draw * this.block + i] as number);
      const begin = beginOf(person, i, times[i] as number, minutes);
      times[i] = begin;
      if (!piece.isBreak && begin + minutes > (person.workedUntil[i] as number)) person.workedUntil[i] = begin + minutes;
    }
  }
}

function remember(person: Person, morning: number, from: number, until: number): void {
  const at = morning * WAITS + (person.oldest[morning] as number);
  person.waitFrom[at] = from;
  person.waitUntil[at] = until;
  if (until > (person.lastWaitUntil[morning] as number)) person.lastWaitUntil[morning] = until;
  person.oldest[morning] = ((person.oldest[morning] as number) + 1) % WAITS;
}

/** When a piece is begun: in the earliest wait it fits into, else when all before it is done. */
function beginOf(person: Person, morning: number, wanted: number, minutes: number): number {
  const { waitFrom, waitUntil, free } = person;
  const freeFrom = free[morning] as number;
  if (wanted < freeFrom && wanted + minutes <= (person.lastWaitUntil[morning] as number)) {
    let best = -1;
    let bestBegin = freeFrom;
    for (let at = morning * WAITS; at < (morning + 1) * WAITS; at++) {
      const from = waitFrom[at] as number;
      const begin = Math.max(from, wanted);
      if (begin + minutes <= (waitUntil[at] as number) && begin < bestBegin) {
        best = at;
        bestBegin = begin;
      }
    }
    if (best >= 0) {
      const until = waitUntil[best] as number;
      waitUntil[best] = bestBegin;
      if (until > bestBegin + minutes) remember(person, morning, bestBegin + minutes, until);
      return bestBegin;
    }
  }
  const begin = Math.max(wanted, freeFrom);
  if (begin > freeFrom) remember(person, morning, freeFrom, begin);
  free[morning] = begin + minutes;
  return begin;
}
