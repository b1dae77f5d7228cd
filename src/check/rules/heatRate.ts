// HEAT_RATE: |toC - fromC| <= rate x (end - start), the rate that of heating up or cooling down; fromC = the temperature
// before; start of a move >= end of the one before.
import { C_TOLERANCE } from '../bakesOnDecks.ts';
import { type DeckDay, movedUntil } from '../deckDays.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayC, sayMinute, sayMinutes } from '../sayMinute.ts';

function deckFindings(day: JudgedDay, { id, oven, deck, setPoints }: DeckDay): readonly Finding[] {
  return setPoints.flatMap((move, index) => {
    const before = setPoints[index - 1];
    const beforeC = before?.toC ?? deck.startsAtC;
    const minutes = move.end - move.start;
    const isRise = move.toC > move.fromC;
    const rate = isRise ? oven.heatUpCPerMinute : oven.coolDownCPerMinute;
    const changeC = Math.abs(move.toC - move.fromC);
    const start = sayMinute(day.clock, move.start);
    const found: string[] = [];
    if (before !== undefined && move.start < before.end) {
      found.push(`The move of deck ${id} at ${start} starts ${sayMinutes(before.end - move.start)} before the last one ends.`);
    }
    if (Math.abs(move.fromC - beforeC) > C_TOLERANCE) {
      found.push(`The move of deck ${id} at ${start} starts from ${sayC(move.fromC)}; the deck is at ${sayC(beforeC)}.`);
    }
    if (changeC > rate * minutes + C_TOLERANCE) {
      found.push(
        `Deck ${id} is to go from ${sayC(move.fromC)} to ${sayC(move.toC)} in ${sayMinutes(minutes)} from ${start}; ` +
          `the oven ${isRise ? 'heats up' : 'cools down'} ${rate} C a minute and needs ${sayMinutes(Math.ceil(changeC / rate))}.`,
      );
    }
    return found.map((says) => ({ says, taskIds: [], minute: move.start, until: movedUntil(move) }));
  });
}

export function heatRate(day: JudgedDay): readonly Finding[] {
  return [...day.decks.values()].flatMap((deck) => deckFindings(day, deck));
}
