// Bounds of whole-number variables and the trail of how each was raised, so that any of it can be taken back and explained.
// A variable v has two sides: side 2v holds its lower bound, side 2v + 1 the lower bound of its negative, so that every
// change is a rise. A literal is a side and a number: true when the side has risen that far. The state of the learning solver.

/** How an entry of the trail came about: a decision, a clause, an arc, or a note of literals written down at the time. */
export const DECISION = 0;
export const BY_CLAUSE = 1;
export const BY_ARC = 2;
export const BY_NOTE = 3;

/** No literal: a conflict that is a note alone. */
export const NO_SIDE = -1;

function grown(array: Int32Array, size: number): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(Math.max(size, 2 * array.length));
  larger.set(array);
  return larger;
}

export class Bounds {
  /** Lower bound of each side. */
  low: Int32Array<ArrayBuffer> = new Int32Array(64);
  /** Latest trail entry of each side, -1 when it stands where it began. */
  lastEntry: Int32Array<ArrayBuffer> = new Int32Array(64).fill(-1);
  sideCount = 0;

  entrySide: Int32Array<ArrayBuffer> = new Int32Array(1024);
  entryLow: Int32Array<ArrayBuffer> = new Int32Array(1024);
  entryOld: Int32Array<ArrayBuffer> = new Int32Array(1024);
  entryPrevious: Int32Array<ArrayBuffer> = new Int32Array(1024);
  /** Kind in the two lowest bits, clause, arc or note above them. */
  entryReason: Int32Array<ArrayBuffer> = new Int32Array(1024);
  entryLevel: Int32Array<ArrayBuffer> = new Int32Array(1024);
  size = 0;

  level = 0;
  private levelStart: Int32Array<ArrayBuffer> = new Int32Array(256);
  private levelNotes: Int32Array<ArrayBuffer> = new Int32Array(256);

  /** Notes: a count, then as many pairs of side and number. */
  notes: Int32Array<ArrayBuffer> = new Int32Array(4096);
  noteSize = 0;

  /** The failed rise: its side (NO_SIDE when the reason alone is contradictory), its number and its reason. */
  conflictSide = NO_SIDE;
  conflictLow = 0;
  conflictReason = 0;

  /** Adds a variable of values `min` to `max`, both included. Returns its number. */
  addVariable(min: number, max: number): number {
    const side = this.sideCount;
    if (side + 2 > this.low.length) {
      this.low = grown(this.low, side + 2);
      const larger = new Int32Array(this.low.length).fill(-1);
      larger.set(this.lastEntry);
      this.lastEntry = larger;
    }
    this.low[side] = min;
    this.low[side + 1] = -max;
    this.sideCount = side + 2;
    return side >> 1;
  }

  min(variable: number): number {
    return this.low[2 * variable] as number;
  }

  max(variable: number): number {
    return -(this.low[2 * variable + 1] as number);
  }

  isTrue(side: number, low: number): boolean {
    return (this.low[side] as number) >= low;
  }

  isFalse(side: number, low: number): boolean {
    return -(this.low[side ^ 1] as number) < low;
  }

  /** Raises a side. False, with the conflict noted, when its variable has no value left. */
  raise(side: number, low: number, reason: number): boolean {
    const old = this.low[side] as number;
    if (low <= old) return true;
    if (low > -(this.low[side ^ 1] as number)) {
      this.conflictSide = side;
      this.conflictLow = low;
      this.conflictReason = reason;
      return false;
    }
    const at = this.size;
    if (at === this.entrySide.length) this.growTrail();
    this.entrySide[at] = side;
    this.entryLow[at] = low;
    this.entryOld[at] = old;
    this.entryPrevious[at] = this.lastEntry[side] as number;
    this.entryReason[at] = reason;
    this.entryLevel[at] = this.level;
    this.low[side] = low;
    this.lastEntry[side] = at;
    this.size = at + 1;
    return true;
  }

  /** Notes a contradiction among literals written down at `note`. */
  contradict(note: number): false {
    this.conflictSide = NO_SIDE;
    this.conflictReason = (note << 2) | BY_NOTE;
    return false;
  }

  private growTrail(): void {
    const size = this.size + 1;
    this.entrySide = grown(this.entrySide, size);
    this.entryLow = grown(this.entryLow, size);
    this.entryOld = grown(this.entryOld, size);
    this.entryPrevious = grown(this.entryPrevious, size);
    this.entryReason = grown(this.entryReason, size);
    this.entryLevel = grown(this.entryLevel, size);
  }

  /** Begins a note. Literals follow by `note`; `endNote` returns its number. */
  beginNote(): number {
    if (this.noteSize + 1 > this.notes.length) this.notes = grown(this.notes, this.noteSize + 1);
    this.notes[this.noteSize] = 0;
    return this.noteSize++;
  }

  /** Adds a literal to the note begun last. */
  note(begun: number, side: number, low: number): void {
    if (this.noteSize + 2 > this.notes.length) this.notes = grown(this.notes, this.noteSize + 2);
    this.notes[this.noteSize] = side;
    this.notes[this.noteSize + 1] = low;
    this.noteSize += 2;
    this.notes[begun] = (this.notes[begun] as number) + 1;
  }

  openLevel(): void {
    this.level++;
    if (this.level >= this.levelStart.length) {
      this.levelStart = grown(this.levelStart, this.level + 1);
      this.levelNotes = grown(this.levelNotes, this.level + 1);
    }
    this.levelStart[this.level] = this.size;
    this.levelNotes[this.level] = this.noteSize;
  }

  /** Takes back every level above `level`. */
  backTo(level: number): void {
    if (level >= this.level) return;
    const from = this.levelStart[level + 1] as number;
    for (let at = this.size - 1; at >= from; at--) {
      const side = this.entrySide[at] as number;
      this.low[side] = this.entryOld[at] as number;
      this.lastEntry[side] = this.entryPrevious[at] as number;
    }
    this.size = from;
    this.noteSize = this.levelNotes[level + 1] as number;
    this.level = level;
  }

  /** The entry that made a true literal true; -1 when it was true from the beginning. */
  entryOf(side: number, low: number): number {
    let at = this.lastEntry[side] as number;
    while (at >= 0 && (this.entryOld[at] as number) >= low) at = this.entryPrevious[at] as number;
    return at;
  }
}
