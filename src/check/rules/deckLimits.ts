// DECK_LIMITS: minC <= set point <= maxC. A deck that starts outside may hold there, and its first move brings it inside, or goes
// on at once, faster or slower, until it is; nothing bakes on it before.
import type { SetPoint } from '../../model/plan.ts';
import { bakesOnDecks, C_TOLERANCE, minutesOutside } from '../bakesOnDecks.ts';
import { movedUntil } from '../deckDays.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayC, sayMinute } from '../sayMinute.ts';

/** Whether the next move goes on at once the same way: what lies between the two is no set point. */
function goesOn(setPoints: readonly SetPoint[], at: number): boolean {
  const [move, next] = [setPoints[at], setPoints[at + 1]];
  if (move === undefined || next === undefined || next.start !== move.end) return false;
  return (move.toC - move.fromC) * (next.toC - next.fromC) > 0;
}

function moveFindings(day: JudgedDay): readonly Finding[] {
  return [...day.decks.values()].flatMap(({ id, deck, setPoints }) =>
    setPoints.flatMap((move, at) => {
      const { end, toC } = move;
      if (goesOn(setPoints, at)) return [];
      if (toC >= deck.minC - C_TOLERANCE && toC <= deck.maxC + C_TOLERANCE) return [];
      const by = toC < deck.minC ? `${sayC(deck.minC - toC)} below` : `${sayC(toC - deck.maxC)} above`;
      const says =
        `Deck ${id} is set to ${sayC(toC)} at ${sayMinute(day.clock, end)}, ${by} its limits of ${sayC(deck.minC)} ` +
        `to ${sayC(deck.maxC)}.`;
      return [{ says, taskIds: [], minute: end, until: movedUntil(move) }];
    }),
  );
}

/** Bakes while the deck is still outside its limits. */
function bakeFindings(day: JudgedDay): readonly Finding[] {
  return bakesOnDecks(day).flatMap((bake) => {
    const { minC, maxC } = bake.deck.deck;
    return minutesOutside(day, bake, minC, maxC).map(({ minute, actualC }) => {
      const says =
        `${bake.named.id} bakes at ${sayMinute(day.clock, minute)} on deck ${bake.deck.id} at ${sayC(actualC)}, ` +
        `outside its limits of ${sayC(minC)} to ${sayC(maxC)}.`;
      return { says, taskIds: [bake.named.id], minute, until: minute };
    });
  });
}

export function deckLimits(day: JudgedDay): readonly Finding[] {
  return [...moveFindings(day), ...bakeFindings(day)];
}
