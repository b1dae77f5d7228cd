// The line of those who wait: clients take turns, and within one client first come is first served. Used by jobBook.ts.

export class FairLine<T> {
  /** The client whose turn is next first. No client without anything waiting. */
  #turns: { readonly client: string; readonly waiting: T[] }[] = [];

  get length(): number {
    return this.#turns.reduce((sum, { waiting }) => sum + waiting.length, 0);
  }

  add(client: string, item: T): void {
    const turn = this.#turns.find((one) => one.client === client);
    if (turn === undefined) this.#turns.push({ client, waiting: [item] });
    else turn.waiting.push(item);
  }

  /** Takes out the next; its client goes to the end. Undefined when nobody waits. */
  next(): T | undefined {
    const turn = this.#turns.shift();
    const item = turn?.waiting.shift();
    if (turn !== undefined && turn.waiting.length > 0) this.#turns.push(turn);
    return item;
  }

  /** Whether it was there. */
  remove(item: T): boolean {
    const turn = this.#turns.find(({ waiting }) => waiting.includes(item));
    if (turn === undefined) return false;
    turn.waiting.splice(turn.waiting.indexOf(item), 1);
    if (turn.waiting.length === 0) this.#turns = this.#turns.filter((one) => one !== turn);
    return true;
  }

  /** How many will be served before it if nobody comes or goes. */
  ahead(item: T): number {
    const at = this.#turns.findIndex(({ waiting }) => waiting.includes(item));
    const mine = this.#turns[at];
    if (mine === undefined) return 0;
    const before = mine.waiting.indexOf(item);
    // Whoever's turn comes earlier is served once more than I have been when my turn is there; the others as often.
    const counts = this.#turns.map(({ waiting }, i) => Math.min(waiting.length, before + (i < at ? 1 : 0)));
    return counts.reduce((sum, count) => sum + count, 0);
  }
}
