// Which place holds what, as the day went so far: bench, bowls, shelves, retarder places, decks, rack. Used by soFar.ts.
import type { Place, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { OutOfUse } from '../../model/underway.ts';

/** A tray or batch in a place; `until` is null while it is there and nobody knows until when. */
export type Stay = { readonly place: Place; readonly taskId: string; readonly from: number; until: number | null };

const OUT_KIND: Readonly<Record<string, OutOfUse['kind']>> = {
  deck: 'deck',
  shelf: 'proofer',
  retarder: 'retarder',
  bowl: 'mixer',
};

function roomsOf({ equipment }: Scenario): ReadonlyMap<string, number> {
  const cabinet = (kind: string) => (one: { readonly id: string; readonly shelves: number; readonly traysPerShelf: number }) =>
    [`${kind} ${one.id}`, one.shelves * one.traysPerShelf] as const;
  return new Map([
    ...equipment.proofers.map(cabinet('shelf')),
    ...equipment.retarders.map(cabinet('retarder')),
    ...(equipment.mixers ?? []).map(({ id }) => [`bowl ${id}`, 1] as const),
    ...equipment.ovens.flatMap((oven) => oven.decks.map((deck) => [`deck ${oven.id}/${deck.id}`, deck.trays] as const)),
    ...(equipment.bench === undefined ? [] : [['bench bench', equipment.bench.places] as const]),
    ...(equipment.coolingRack === undefined ? [] : [['rack cooling-rack', equipment.coolingRack.trays] as const]),
  ]);
}

export class Rooms {
  private readonly places: ReadonlyMap<string, number>;
  private readonly together: ReadonlySet<string>;
  private readonly out: readonly OutOfUse[];
  private readonly stays = new Map<string, Stay[]>();

  constructor(scenario: Scenario, out: readonly OutOfUse[]) {
    this.places = roomsOf(scenario);
    this.out = out;
    this.together = new Set(
      scenario.equipment.ovens
        .filter(({ loading }) => loading === 'together')
        .flatMap((oven) => oven.decks.map((deck) => `${oven.id}/${deck.id}`)),
    );
  }

  staysIn({ kind, id }: Place): readonly Stay[] {
    return this.stays.get(`${kind} ${id}`) ?? [];
  }

  /** How much a place holds; 0 for one the scenario does not have. */
  roomOf({ kind, id }: Place): number {
    return this.places.get(`${kind} ${id}`) ?? 0;
  }

  /** Puts a task in a position. */
  put(task: Task, position: number, from: number, until: number | null): Stay | null {
    if (task.place === undefined) return null;
    const stay: Stay = { place: { ...task.place, position }, taskId: task.id, from, until };
    const key = `${task.place.kind} ${task.place.id}`;
    const own = this.stays.get(key) ?? [];
    own.push(stay);
    this.stays.set(key, own);
    return stay;
  }

  /** Free positions of a place at a minute. */
  freePositions(place: Place, at: number): readonly number[] {
    const there = this.staysIn(place).filter(({ until }) => until === null || until > at);
    if (there.length > 0 && place.kind === 'deck' && this.together.has(place.id)) return [];
    const taken = new Set(there.map((stay) => stay.place.position));
    return Array.from({ length: this.roomOf(place) }, (_, index) => index + 1).filter((position) => !taken.has(position));
  }

  /** Whether what begins there at a minute finds the place in use. Nobody knew beforehand of what breaks down later. */
  isInUse({ kind, id }: Place, at: number): boolean {
    return !this.out.some((one) => one.kind === OUT_KIND[kind] && one.id === id && one.from <= at && at < one.until);
  }
}
