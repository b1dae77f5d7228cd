// DECK_LIMITS_UPSIDE_DOWN, DECK_STARTS_TOO_HOT: minC <= maxC, and startsAtC <= maxC.
import type { Deck } from '../../model/equipment.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';

function limitsOf(deck: Deck, at: string): readonly CodedError[] {
  const name = `Deck ${shown(deck.id)}`;
  if (deck.minC > deck.maxC) {
    const says = `${name} has minC ${deck.minC} above maxC ${deck.maxC}.`;
    return [
      inputErrorAt('DECK_LIMITS_UPSIDE_DOWN', `${at}/minC`, says, 'Write the lowest set point in minC, the highest in maxC.'),
    ];
  }
  if (deck.startsAtC > deck.maxC) {
    const says = `${name} starts the day at ${deck.startsAtC} C, hotter than its maxC ${deck.maxC}.`;
    return [
      inputErrorAt('DECK_STARTS_TOO_HOT', `${at}/startsAtC`, says, `Write startsAtC of at most ${deck.maxC}, or raise maxC.`),
    ];
  }
  return [];
}

export function deckLimits({ ovens }: Parts): readonly CodedError[] {
  return ovens.sound.flatMap(({ at, value }) => value.decks.flatMap((deck, index) => limitsOf(deck, `${at}/decks/${index}`)));
}
