// What is held side by side of each day: a length to draw, the text beside it, and what lies beyond. Used by changePages.
import { clockOfPlan, wallClockAt } from '../../model/clock.ts';
import type { Comparison, DayFigures } from '../../model/comparison.ts';

/** One figure of one day. `value` and `beyond` are lengths in the measure's own unit, 0 or more; `beyond` never below `value`. */
export type Figure = { readonly value: number; readonly beyond: number; readonly text: string };

export type Measure = {
  readonly title: string;
  readonly note: string;
  readonly figureOf: (figures: DayFigures) => Figure;
};

function hours(minutes: number): string {
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}

function traysOf({ capacity }: DayFigures): Figure {
  if (capacity === null) return { value: 0, beyond: 0, text: 'not looked' };
  const { foundTrays, limitTrays, isExact } = capacity;
  if (isExact) return { value: foundTrays, beyond: foundTrays, text: String(foundTrays) };
  const text = limitTrays === null ? `${foundTrays} or more` : `${foundTrays} to ${limitTrays}`;
  return { value: foundTrays, beyond: limitTrays ?? foundTrays, text };
}

function troubleOf({ score }: DayFigures): Figure {
  const { lateTrayMinutes: late, leftOutTrays: leftOut } = score;
  const parts = [...(leftOut === 0 ? [] : [`${leftOut} left out`]), ...(late === 0 ? [] : [`${late} min late`])];
  return { value: late, beyond: late, text: parts.length === 0 ? 'none' : parts.join(', ') };
}

function handsOf({ people, handsOnMinutes, paidMinutes }: DayFigures): Figure {
  if (people.length === 0) return { value: 0, beyond: 0, text: 'no people' };
  return { value: handsOnMinutes, beyond: paidMinutes, text: `${hours(handsOnMinutes)} of ${hours(paidMinutes)}` };
}

/** The measures, from left to right. */
export function measuresOf(comparison: Comparison): readonly Measure[] {
  const clock = clockOfPlan(comparison);
  const single = (value: number, text: string): Figure => ({ value, beyond: value, text });
  return [
    { title: 'Trays on time', note: 'dotted: not decided', figureOf: traysOf },
    { title: 'Late or left out', note: 'minutes over all trays', figureOf: troubleOf },
    {
      title: 'Last tray ready',
      note: 'from the start of the day',
      figureOf: ({ score }) =>
        single(score.finishMinute, score.finishMinute === 0 ? '-' : wallClockAt(clock, score.finishMinute)),
    },
    { title: 'Ovens on', note: 'heat-up included', figureOf: ({ ovenMinutes }) => single(ovenMinutes, hours(ovenMinutes)) },
    { title: 'Hands-on', note: 'of the hours paid', figureOf: handsOf },
    {
      title: 'Price',
      note: 'less is better',
      figureOf: ({ score }) => single(score.cost, String(Math.round(score.cost))),
    },
  ];
}
