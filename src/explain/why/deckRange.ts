// The temperatures a deck can have at each minute between the bakes that stand on it, whatever its set point does. Used by why.
//
// Lowest and highest temperature follow from the start of the day, the limits of the deck, the ranges of its bakes and the pace of the
// oven, forward and backward. All of these bound differences of two temperatures or one temperature, so that a further bake fits
// exactly when its own range meets what is left at each of its minutes (a system of difference constraints has a solution when no two
// of them contradict each other along a path: Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, section on
// difference constraints; from memory).
import { bakesOnDecks } from '../../check/bakesOnDecks.ts';
import type { JudgedDay } from '../../check/judgedDay.ts';
import { type Range, rangeOf } from '../../model/units.ts';

/** Lowest and highest temperature in C at each minute of the day, its last included. */
export type DeckRange = { readonly lowC: Float64Array; readonly highC: Float64Array; readonly limits: Range };

function follow({ lowC, highC }: DeckRange, heat: number, cool: number): void {
  const last = lowC.length - 1;
  for (let t = 1; t <= last; t++) {
    lowC[t] = Math.max(lowC[t] as number, (lowC[t - 1] as number) - cool);
    highC[t] = Math.min(highC[t] as number, (highC[t - 1] as number) + heat);
  }
  for (let t = last - 1; t >= 0; t--) {
    lowC[t] = Math.max(lowC[t] as number, (lowC[t + 1] as number) - heat);
    highC[t] = Math.min(highC[t] as number, (highC[t + 1] as number) + cool);
  }
}

/** Of every deck, by oven/deck. */
export function deckRanges(day: JudgedDay): ReadonlyMap<string, DeckRange> {
  const bakes = bakesOnDecks(day);
  return new Map(
    [...day.decks.values()].map(({ id, deck, oven }) => {
      const { minC, maxC, startsAtC } = deck;
      const range: DeckRange = {
        lowC: new Float64Array(day.clock.minutes + 1).fill(Math.min(minC, startsAtC)),
        highC: new Float64Array(day.clock.minutes + 1).fill(Math.max(maxC, startsAtC)),
        limits: { min: minC, max: maxC },
      };
      range.lowC[0] = startsAtC;
      range.highC[0] = startsAtC;
      for (const { step, named } of bakes.filter((bake) => bake.deck.id === id)) {
        const { min, max } = rangeOf(step.temperatureC);
        for (let t = Math.max(0, named.task.start); t <= Math.min(day.clock.minutes, named.task.end); t++) {
          range.lowC[t] = Math.max(range.lowC[t] as number, min, minC);
          range.highC[t] = Math.min(range.highC[t] as number, max, maxC);
        }
      }
      follow(range, oven.heatUpCPerMinute, oven.coolDownCPerMinute);
      return [id, range];
    }),
  );
}
