// Every place with limited room and every person of a day, with who has them when. Read off the plan; used by busiest and why.
import { type Holding, holdings } from '../../check/holdings.ts';
import type { JudgedDay } from '../../check/judgedDay.ts';
import { workByPerson } from '../../check/personWork.ts';
import { roomOf } from '../../check/places.ts';
import { PLACE_KINDS, type PlaceKind } from '../../model/plan.ts';
import type { Person, Scenario } from '../../model/scenario.ts';
import type { ResourceKind } from '../../model/why.ts';

/** Who has a place or a person from when until when, `until` excluded. */
export type Holder = { readonly from: number; readonly until: number; readonly taskId: string };

export type Resource = {
  readonly kind: ResourceKind;
  readonly id: string;
  readonly name: string;
  /** How many at once. */
  readonly room: number;
  /** For each minute of the day, 1 when it may be used: a person inside hours and outside breaks, a place always. */
  readonly open: Uint8Array;
  readonly holders: readonly Holder[];
};

/** What people call each place, by kind and id. */
export function placeName(scenario: Scenario, kind: PlaceKind, id: string): string {
  const { ovens, proofers, retarders, mixers } = scenario.equipment;
  if (kind === 'bench') return 'bench';
  if (kind === 'rack') return 'cooling rack';
  if (kind === 'deck') {
    for (const oven of ovens) {
      const deck = oven.decks.find((one) => `${oven.id}/${one.id}` === id);
      if (deck === undefined) continue;
      return deck.name ?? (ovens.length > 1 ? `${oven.name ?? oven.id} ${deck.id}` : deck.id);
    }
  }
  const lists = { shelf: proofers, retarder: retarders, bowl: mixers ?? [], deck: [] };
  return lists[kind].find((one) => one.id === id)?.name ?? id;
}

/** Minutes a person is there: hours less breaks. */
export function minutesThere(day: JudgedDay, person: Person): Uint8Array {
  const there = new Uint8Array(day.clock.minutes);
  there.fill(1, Math.max(0, day.minuteOf(person.from)), Math.max(0, day.minuteOf(person.until)));
  for (const { from, until } of person.breaks) there.fill(0, Math.max(0, day.minuteOf(from)), Math.max(0, day.minuteOf(until)));
  return there;
}

function placesOf(day: JudgedDay, held: readonly Holding[], kind: PlaceKind): readonly Resource[] {
  return [...(roomOf(day.scenario, kind) ?? [])].map(([id, room]) => ({
    kind,
    id,
    name: placeName(day.scenario, kind, id),
    room,
    open: new Uint8Array(day.clock.minutes).fill(1),
    holders: held
      .filter((holding) => holding.kind === kind && holding.placeId === id)
      .map(({ from, until, named }) => ({ from, until, taskId: named.id })),
  }));
}

/** Places in the order of the scenario, kind by kind, then people. Those without a limit are not among them. */
export function resourcesOf(day: JudgedDay): readonly Resource[] {
  const held = holdings(day);
  const work = workByPerson(day);
  const people = (day.scenario.people ?? []).map(
    (person): Resource => ({
      kind: 'person',
      id: person.id,
      name: person.name ?? person.id,
      room: 1,
      open: minutesThere(day, person),
      holders: (work.get(person.id) ?? []).map(({ start, end, taskId }) => ({ from: start, until: end, taskId })),
    }),
  );
  return [...PLACE_KINDS.flatMap((kind) => placesOf(day, held, kind)), ...people];
}

/** How many hold it at each minute of the day. */
export function heldPerMinute(resource: Resource): Uint16Array {
  const { length } = resource.open;
  const held = new Uint16Array(length);
  for (const { from, until } of resource.holders) {
    for (let minute = Math.max(0, from); minute < Math.min(length, until); minute++) held[minute] = (held[minute] ?? 0) + 1;
  }
  return held;
}
