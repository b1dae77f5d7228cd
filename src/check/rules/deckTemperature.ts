// DECK_TEMPERATURE: lowest allowed <= temperature of the deck <= highest allowed, at every minute from bake begin to bake end,
// both included.
import { rangeOf } from '../../model/units.ts';
import { bakesOnDecks, minutesOutside } from '../bakesOnDecks.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayC, sayMinute } from '../sayMinute.ts';

export function deckTemperature(day: JudgedDay): readonly Finding[] {
  return bakesOnDecks(day).flatMap((bake) => {
    const { min, max } = rangeOf(bake.step.temperatureC);
    return minutesOutside(day, bake, min, max).map(({ minute, actualC }) => {
      const by = actualC < min ? `${sayC(min - actualC)} too cold` : `${sayC(actualC - max)} too hot`;
      const says =
        `At ${sayMinute(day.clock, minute)} deck ${bake.deck.id} is at ${sayC(actualC)}, ${by} for ${bake.named.id}, ` +
        `which bakes at ${sayC(min)} to ${sayC(max)}.`;
      return { says, taskIds: [bake.named.id], minute, until: minute };
    });
  });
}
