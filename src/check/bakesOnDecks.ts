// The bakes that stand on a deck the scenario has, each with its deck.
import type { Bake } from '../model/steps.ts';
import type { DeckDay } from './deckDays.ts';
import type { JudgedDay } from './judgedDay.ts';
import type { NamedTask } from './nameTasks.ts';

/** Allowance for adding up temperatures in decimals, in C. */
export const C_TOLERANCE = 1e-6;

export type BakeOnDeck = { readonly step: Bake; readonly named: NamedTask; readonly deck: DeckDay };

export function bakesOnDecks(day: JudgedDay): readonly BakeOnDeck[] {
  return day.trays.flatMap((tray) =>
    tray.runs.flatMap((run) => {
      const place = run?.named.task.place;
      if (run?.step.do !== 'bake' || place?.kind !== 'deck') return [];
      const deck = day.decks.get(place.id);
      return deck === undefined ? [] : [{ step: run.step, named: run.named, deck }];
    }),
  );
}

export type MinuteOutside = { readonly minute: number; readonly actualC: number };

/** First minute of a stretch, both ends included, at which the deck is outside a range; with its temperature. */
function firstOutside(deck: DeckDay, from: number, to: number, minC: number, maxC: number): readonly MinuteOutside[] {
  const lastMinute = Math.min(to, deck.temperatureC.length - 1);
  for (let minute = Math.max(0, from); minute <= lastMinute; minute++) {
    const actualC = deck.temperatureC[minute];
    if (actualC !== undefined && (actualC < minC - C_TOLERANCE || actualC > maxC + C_TOLERANCE)) return [{ minute, actualC }];
  }
  return [];
}

/**
 * First minute from bake begin to bake end, both included, at which the deck is outside a range. Of a day under way, the first
 * up to now, included, and the first after it.
 */
export function minutesOutside(
  day: JudgedDay,
  { named: { task }, deck }: BakeOnDeck,
  minC: number,
  maxC: number,
): readonly MinuteOutside[] {
  const now = day.scenario.underway?.now;
  if (now === undefined) return firstOutside(deck, task.start, task.end, minC, maxC);
  return [
    ...firstOutside(deck, task.start, Math.min(task.end, now), minC, maxC),
    ...firstOutside(deck, Math.max(task.start, now + 1), task.end, minC, maxC),
  ];
}
