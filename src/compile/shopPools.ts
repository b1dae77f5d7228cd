// The bakehouse as pools and chambers: bowls, bench, shelves, retarders, racks and people become pools, decks chambers.
// Like people share a pool; who does what is dealt when the plan is written.
import type { Clock } from '../model/clock.ts';
import { minuteAt } from '../model/clock.ts';
import type { Person, Scenario } from '../model/scenario.ts';
import type { StepKind } from '../model/steps.ts';
import { rangeOf } from '../model/units.ts';
import type { Chamber, Pool } from '../solver/problem.ts';

export type Span = readonly [number, number];

/** What a pool stands for. */
export type PoolRole =
  | { readonly kind: 'bowl'; readonly id: string; readonly bowlKg: number }
  | { readonly kind: 'bench' }
  | { readonly kind: 'shelf'; readonly id: string; readonly temperatureC: number }
  | { readonly kind: 'retarder'; readonly id: string; readonly temperatureC: number }
  | { readonly kind: 'rack' }
  | { readonly kind: 'people'; readonly ids: readonly string[]; readonly cannot: readonly StepKind[] };

export type DeckRole = { readonly id: string; readonly hasSteam: boolean; readonly minC: number; readonly maxC: number };

export type ShopPools = {
  readonly pools: readonly Pool[];
  readonly roles: readonly PoolRole[];
  readonly chambers: readonly Chamber[];
  readonly decks: readonly DeckRole[];
};

/** Minutes a person may work: hours within the day, less breaks. */
export function workingSpans(person: Person, clock: Clock): Span[] {
  let spans: Span[] = [[Math.max(0, minuteAt(clock, person.from)), Math.min(clock.minutes, minuteAt(clock, person.until))]];
  for (const rest of person.breaks) {
    const from = minuteAt(clock, rest.from);
    const until = minuteAt(clock, rest.until);
    spans = spans.flatMap(([a, b]): Span[] => [
      [a, Math.min(b, from)],
      [Math.max(a, until), b],
    ]);
  }
  return spans.filter(([a, b]) => a < b);
}

/** `isEachAlone`: a pool for each person, where it matters who it is. */
function peoplePools(people: readonly Person[], clock: Clock, isEachAlone: boolean): { pool: Pool; role: PoolRole }[] {
  const alike = new Map<string, { spans: Span[]; cannot: StepKind[]; ids: string[] }>();
  for (const person of people) {
    const spans = workingSpans(person, clock);
    const cannot = [...new Set(person.cannot)].sort();
    const key = JSON.stringify([spans, cannot, isEachAlone ? person.id : '']);
    const group = alike.get(key) ?? { spans, cannot, ids: [] };
    group.ids.push(person.id);
    alike.set(key, group);
  }
  return [...alike.values()].map(({ spans, cannot, ids }) => ({
    pool: { id: `people ${ids.join(', ')}`, capacity: ids.length, open: spans },
    role: { kind: 'people', ids, cannot },
  }));
}

function chambersOf(scenario: Scenario): { chambers: Chamber[]; decks: DeckRole[] } {
  const pairs = scenario.equipment.ovens.flatMap((oven) =>
    oven.decks.map((deck) => ({
      chamber: {
        id: `${oven.id}/${deck.id}`,
        room: deck.trays,
        min: deck.minC,
        max: deck.maxC,
        initial: deck.startsAtC,
        riseRate: oven.heatUpCPerMinute,
        fallRate: oven.coolDownCPerMinute,
        together: oven.loading === 'together',
      },
      deck: { id: `${oven.id}/${deck.id}`, hasSteam: deck.steam, minC: deck.minC, maxC: deck.maxC },
    })),
  );
  return { chambers: pairs.map((pair) => pair.chamber), decks: pairs.map((pair) => pair.deck) };
}

/** Pools and chambers of a bakehouse. Places the scenario leaves unlimited have no pool. */
export function shopPoolsOf(scenario: Scenario, clock: Clock): ShopPools {
  const allDay: readonly Span[] = [[0, clock.minutes]];
  const { equipment } = scenario;
  const entries: { pool: Pool; role: PoolRole }[] = [];
  for (const mixer of equipment.mixers ?? []) {
    entries.push({
      pool: { id: mixer.id, capacity: 1, open: allDay },
      role: { kind: 'bowl', id: mixer.id, bowlKg: mixer.bowlKg },
    });
  }
  if (equipment.bench !== undefined)
    entries.push({ pool: { id: 'bench', capacity: equipment.bench.places, open: allDay }, role: { kind: 'bench' } });
  for (const { id, shelves, traysPerShelf, temperatureC } of equipment.proofers) {
    entries.push({ pool: { id, capacity: shelves * traysPerShelf, open: allDay }, role: { kind: 'shelf', id, temperatureC } });
  }
  for (const { id, shelves, traysPerShelf, temperatureC } of equipment.retarders) {
    entries.push({ pool: { id, capacity: shelves * traysPerShelf, open: allDay }, role: { kind: 'retarder', id, temperatureC } });
  }
  if (equipment.coolingRack !== undefined) {
    entries.push({ pool: { id: 'cooling-rack', capacity: equipment.coolingRack.trays, open: allDay }, role: { kind: 'rack' } });
  }
  entries.push(...peoplePools(scenario.people ?? [], clock, scenario.underway !== undefined));
  const { chambers, decks } = chambersOf(scenario);
  return { pools: entries.map((entry) => entry.pool), roles: entries.map((entry) => entry.role), chambers, decks };
}

/** Pools that may serve a kind of place; `suits` narrows it by temperature or size. */
export function poolsOf(shop: ShopPools, suits: (role: PoolRole) => boolean): number[] {
  return shop.roles.flatMap((role, p) => (suits(role) ? [p] : []));
}

/** Pools of people who do a step. */
export function handsFor(shop: ShopPools, step: StepKind): number[] {
  return poolsOf(shop, (role) => role.kind === 'people' && !role.cannot.includes(step));
}

/** Decks that can bake within a range, with steam if need be, and the range each leaves. */
export function decksFor(shop: ShopPools, temperatureC: number | readonly [number, number], steam: boolean): number[] {
  const range = rangeOf(temperatureC);
  return shop.decks.flatMap((deck, d) =>
    deck.maxC >= range.min && deck.minC <= range.max && (deck.hasSteam || !steam) ? [d] : [],
  );
}
