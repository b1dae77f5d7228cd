// The change "one more place on a deck": on each deck that can bake the trays. Used by whatWouldFit.

import { resourceWords } from '../../explain/why/words.ts';
import type { Deck } from '../../model/equipment.ts';
import type { Bake } from '../../model/steps.ts';
import { rangeOf } from '../../model/units.ts';
import type { LadderOf, Variant } from './ladder.ts';
import { productsOf } from './wantedProducts.ts';

function canBake(deck: Deck, bake: Bake): boolean {
  const { min, max } = rangeOf(bake.temperatureC);
  return deck.maxC >= min && deck.minC <= max && (deck.steam || !bake.steam);
}

export const deckPlace: LadderOf = (ground) => {
  const { ovens } = ground.scenario.equipment;
  const bakes = productsOf(ground).flatMap(({ steps }) => steps.filter((step) => step.do === 'bake'));
  if (bakes.length === 0) return 'Its trays are not baked.';
  const variants = ovens.flatMap(({ decks }, oven) =>
    decks.flatMap((deck, index): Variant[] => {
      if (!bakes.some((bake) => canBake(deck, bake))) return [];
      const of = ovens.length === 1 ? '' : ` of ${ovens[oven]?.name ?? ovens[oven]?.id}`;
      const more = deck.trays + 1;
      return [
        {
          amount: 1,
          operations: [{ op: 'replace', path: `/equipment/ovens/${oven}/decks/${index}/trays`, value: more }],
          does: `Have room for one more tray on ${resourceWords('deck', deck.name ?? deck.id)}${of}, ${more} instead of ${deck.trays}`,
          earlierBy: 0,
        },
      ];
    }),
  );
  return {
    kind: 'deck-place',
    top: 1,
    first: 1,
    at: () => variants,
    topWords: 'One more place on any one deck',
    isRising: true,
  };
};
