// NO_DECK_FITS: every bake has a deck whose limits meet its temperatures, with steam where the bake needs it.
import type { Deck } from '../../model/equipment.ts';
import type { Bake } from '../../model/steps.ts';
import { rangeOf } from '../../model/units.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';

type NamedDeck = { readonly name: string; readonly deck: Deck };

function reaches({ deck }: NamedDeck, bake: Bake): boolean {
  const { min, max } = rangeOf(bake.temperatureC);
  return deck.minC <= max && min <= deck.maxC;
}

function bakeError(bake: Bake, at: string, product: string, decks: readonly NamedDeck[]): CodedError | undefined {
  if (decks.some((each) => reaches(each, bake) && (each.deck.steam || !bake.steam))) return undefined;
  const { min, max } = rangeOf(bake.temperatureC);
  const heat = min === max ? `${min} C` : `${min} to ${max} C`;
  const name = `Product ${shown(product)}`;
  if (decks.length === 0) {
    return inputErrorAt(
      'NO_DECK_FITS',
      at,
      `${name} is baked and there is no oven.`,
      'Add an oven with a deck, or take the bake out.',
    );
  }
  if (decks.some((each) => reaches(each, bake))) {
    const says = `${name} is baked with steam at ${heat}, and no deck that reaches it gives steam.`;
    return inputErrorAt('NO_DECK_FITS', at, says, 'Write steam: true on a deck that gives it, or bake without.');
  }
  const limits = decks.map(({ name: deckName, deck }) => `${shown(deckName)} ${deck.minC} to ${deck.maxC} C`);
  const says = `${name} is baked at ${heat}, and no deck reaches that: ${limits.slice(0, 8).join(', ')}${limits.length > 8 ? ', ...' : ''}.`;
  return inputErrorAt('NO_DECK_FITS', at, says, 'Change the temperature of the bake, or minC and maxC of a deck.');
}

export function decksFit({ ovens, products }: Parts): readonly CodedError[] {
  if (!ovens.isWhole) return [];
  const decks = ovens.sound.flatMap(({ value }) => value.decks.map((deck) => ({ name: `${value.id}/${deck.id}`, deck })));
  return products.sound.flatMap(({ at, value }) =>
    value.steps.flatMap((step, index) => {
      if (step.do !== 'bake') return [];
      return bakeError(step, `${at}/steps/${index}`, value.id, decks) ?? [];
    }),
  );
}
