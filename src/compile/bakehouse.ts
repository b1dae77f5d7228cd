// What a reader of the plan needs to know of the bakehouse: names, room and hours.
import { type Clock, minuteAt } from '../model/clock.ts';
import type { Bakehouse } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';

export function bakehouseOf(scenario: Scenario, clock: Clock): Bakehouse {
  const { equipment } = scenario;
  const cabinet = (one: {
    readonly id: string;
    readonly name?: string | undefined;
    readonly shelves: number;
    readonly traysPerShelf: number;
    readonly temperatureC: number;
  }) => ({
    id: one.id,
    name: one.name ?? one.id,
    places: one.shelves * one.traysPerShelf,
    temperatureC: one.temperatureC,
  });
  return {
    mixers: (equipment.mixers ?? []).map((mixer) => ({ id: mixer.id, name: mixer.name ?? mixer.id, bowlKg: mixer.bowlKg })),
    benchPlaces: equipment.bench?.places ?? null,
    proofers: equipment.proofers.map(cabinet),
    retarders: equipment.retarders.map(cabinet),
    decks: equipment.ovens.flatMap((oven) =>
      oven.decks.map((deck) => ({
        id: `${oven.id}/${deck.id}`,
        name: deck.name ?? (equipment.ovens.length > 1 ? `${oven.name ?? oven.id} ${deck.id}` : deck.id),
        trays: deck.trays,
        startsAtC: deck.startsAtC,
        loading: oven.loading,
      })),
    ),
    coolingRackTrays: equipment.coolingRack?.trays ?? null,
    people: (scenario.people ?? []).map((person) => ({
      id: person.id,
      name: person.name ?? person.id,
      hours: { start: minuteAt(clock, person.from), end: minuteAt(clock, person.until) },
      breaks: person.breaks.map((rest) => ({ start: minuteAt(clock, rest.from), end: minuteAt(clock, rest.until) })),
    })),
    doughs: scenario.doughs.map((dough) => ({ id: dough.id, name: dough.name ?? dough.id })),
    products: scenario.products.map((product) => ({
      id: product.id,
      name: product.name ?? product.id,
      dough: product.dough,
      piecesPerTray: product.piecesPerTray,
      pieceG: product.pieceG,
    })),
  };
}
