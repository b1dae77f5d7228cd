// The verdict on a whole sweep in one sentence: how far it helps, and what takes over then. Used by compare.
import type { Capacity, ComparedDay } from '../../model/comparison.ts';
import type { Scenario } from '../../model/scenario.ts';
import { trayWords } from './capacityAnswer.ts';
import { sayThen } from './verdict.ts';

type Point = { readonly value: number; readonly capacity: Capacity };

function pointsOf(days: readonly ComparedDay[]): readonly Point[] {
  return days.flatMap(({ value, figures }) =>
    value === null || figures.capacity === null ? [] : [{ value, capacity: figures.capacity }],
  );
}

function sayTrays(place: string, points: readonly Point[], scenario: Scenario): readonly string[] {
  const [first] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined) return [];
  const best = Math.max(...points.map(({ capacity }) => capacity.foundTrays));
  const flat = points.find(({ capacity }) => capacity.foundTrays === best) ?? last;
  const words = trayWords(scenario, first.capacity.of ?? undefined, best);
  const isProved = last.capacity.limitTrays === best ? ', and that is proved' : ', as far as was found';
  if (flat === first)
    return [`With ${place} from ${first.value} to ${last.value} the morning takes the same ${best} ${words} on time${isProved}`];
  const rise = `With ${place} at ${first.value} the morning takes ${first.capacity.foundTrays} ${words} on time, at ${flat.value} it takes ${best}`;
  if (flat === last) return [rise, 'more of it may still help'];
  const then = sayThen(last.capacity);
  return [rise, `beyond that it takes no more${isProved}${then === '' ? '' : `: ${then}`}`];
}

function sayPrices(place: string, days: readonly ComparedDay[], isFirst: boolean): readonly string[] {
  const prices = days.map(({ value, figures }) => ({ value, price: Math.round(figures.score.cost * 100) / 100 }));
  const [first] = prices;
  if (first === undefined) return [];
  const least = Math.min(...prices.map(({ price }) => price));
  const at = prices.find(({ price }) => price === least) ?? first;
  const whose = isFirst ? `the price with ${place} at` : 'the price at';
  if (at === first) return [`${whose} ${first.value} is ${first.price} and falls no further`];
  return [`${whose} ${first.value} is ${first.price}, at ${at.value} it is ${at.price} and falls no further`];
}

/** `days` in the order in which things get roomier. */
export function sweepVerdict(place: string, days: readonly ComparedDay[], scenario: Scenario): string {
  if (days.length === 0) return 'There was no time for any value.';
  const trays = sayTrays(place, pointsOf(days), scenario);
  const text = [...trays, ...sayPrices(place, days, trays.length === 0)].join('; ');
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}
