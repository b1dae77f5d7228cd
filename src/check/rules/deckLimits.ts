// DECK_LIMITS: minC <= set point <= maxC. A deck that starts outside may hold there, and its first move brings it inside;
// nothing bakes on it before.
import { bakesOnDecks, C_TOLERANCE, firstMinuteOutside } from '../bakesOnDecks.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayC, sayMinute } from '../sayMinute.ts';

function moveFindings(day: JudgedDay): readonly Finding[] {
  return [...day.decks.values()].flatMap(({ id, deck, setPoints }) =>
    setPoints.flatMap(({ end, toC }) => {
      if (toC >= deck.minC - C_TOLERANCE && toC <= deck.maxC + C_TOLERANCE) return [];
      const by = toC < deck.minC ? `${sayC(deck.minC - toC)} below` : `${sayC(toC - deck.maxC)} above`;
      const says =
        `Deck ${id} is set to ${sayC(toC)} at ${sayMinute(day.clock, end)}, ${by} its limits of ${sayC(deck.minC)} ` +
        `to ${sayC(deck.maxC)}.`;
      return [{ says, taskIds: [], minute: end }];
    }),
  );
}

/** Bakes while the deck is still outside its limits. */
function bakeFindings(day: JudgedDay): readonly Finding[] {
  return bakesOnDecks(day).flatMap((bake) => {
    const { minC, maxC } = bake.deck.deck;
    const outside = firstMinuteOutside(bake, minC, maxC);
    if (outside === undefined) return [];
    const says =
      `${bake.named.id} bakes at ${sayMinute(day.clock, outside.minute)} on deck ${bake.deck.id} at ${sayC(outside.actualC)}, ` +
      `outside its limits of ${sayC(minC)} to ${sayC(maxC)}.`;
    return [{ says, taskIds: [bake.named.id], minute: outside.minute }];
  });
}

export function deckLimits(day: JudgedDay): readonly Finding[] {
  return [...moveFindings(day), ...bakeFindings(day)];
}
