// Which kind of place a step needs, and how much room each place of a scenario has.
import { PLACE_KINDS, type PlaceKind } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { BatchStep, TrayStep } from '../model/steps.ts';

/** Kind of place a step needs; undefined when it needs none. */
export function placeKindOf(step: BatchStep | TrayStep): PlaceKind | undefined {
  switch (step.do) {
    case 'mix':
      return 'bowl';
    case 'fold':
    case 'divide':
    case 'shape':
    case 'finish':
      return 'bench';
    case 'bulk':
      return step.where === 'retarder' ? 'retarder' : undefined;
    case 'retard':
      return 'retarder';
    case 'proof':
      return 'shelf';
    case 'bake':
      return 'deck';
    case 'cool':
      return 'rack';
    case 'rest':
      return undefined;
  }
}

/** Places of one kind by id with the things each holds at once; undefined when the scenario sets that kind no limit. */
export function roomOf(scenario: Scenario, kind: PlaceKind): ReadonlyMap<string, number> | undefined {
  const { ovens, proofers, retarders, mixers, bench, coolingRack } = scenario.equipment;
  switch (kind) {
    case 'bowl':
      return mixers === undefined ? undefined : new Map(mixers.map(({ id }) => [id, 1]));
    case 'bench':
      return bench === undefined ? undefined : new Map([['bench', bench.places]]);
    case 'shelf':
      return new Map(proofers.map(({ id, shelves, traysPerShelf }) => [id, shelves * traysPerShelf]));
    case 'retarder':
      return new Map(retarders.map(({ id, shelves, traysPerShelf }) => [id, shelves * traysPerShelf]));
    case 'deck':
      return new Map(ovens.flatMap((oven) => oven.decks.map((deck) => [`${oven.id}/${deck.id}`, deck.trays])));
    case 'rack':
      return coolingRack === undefined ? undefined : new Map([['cooling-rack', coolingRack.trays]]);
  }
}

/** Every place of the scenario, of any kind. */
export function placeIds(scenario: Scenario): ReadonlySet<string> {
  return new Set(PLACE_KINDS.flatMap((kind) => [...(roomOf(scenario, kind)?.keys() ?? [])]));
}
