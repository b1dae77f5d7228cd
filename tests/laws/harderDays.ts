// The same day made harder: whatever plan works out on a harder day works out on the day itself, so the judge approves it there
// and no bound of the day may be above its cost. Used by the laws about bounds.
import { judge } from '../../src/check/judge.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';

type Change = { readonly name: string; readonly apply: (scenario: Scenario) => Scenario };

const fewer = (count: number): number => Math.max(1, count - 1);

/** The middle of a range, in whole degrees where one lies in it. */
function middle(range: number | readonly [number, number]): [number, number] {
  const [low, high] = typeof range === 'number' ? [range, range] : range;
  const at = Math.ceil((low + high) / 2);
  return at <= high ? [at, at] : [low, high];
}

const inOvens = (scenario: Scenario, decks: (decks: Deck[]) => Deck[]): Scenario => ({
  ...scenario,
  equipment: {
    ...scenario.equipment,
    ovens: scenario.equipment.ovens.map((oven) => ({ ...oven, decks: decks(oven.decks) })),
  },
});
type Deck = Scenario['equipment']['ovens'][number]['decks'][number];

/** Changes after which every plan still keeps every rule of the day as it was. */
export const HARDER: readonly Change[] = [
  {
    name: 'a tray less a deck',
    apply: (day) => inOvens(day, (decks) => decks.map((deck) => ({ ...deck, trays: fewer(deck.trays) }))),
  },
  {
    name: 'a shelf less',
    apply: (day) => ({
      ...day,
      equipment: {
        ...day.equipment,
        proofers: day.equipment.proofers.map((proofer) => ({ ...proofer, shelves: fewer(proofer.shelves) })),
      },
    }),
  },
  {
    name: 'one bench place',
    apply: (day) => ({
      ...day,
      equipment: day.equipment.bench === undefined ? day.equipment : { ...day.equipment, bench: { places: 1 } },
    }),
  },
  {
    name: 'one temperature a bake',
    apply: (day) => ({
      ...day,
      products: day.products.map((product) => ({
        ...product,
        steps: product.steps.map((step) => (step.do === 'bake' ? { ...step, temperatureC: middle(step.temperatureC) } : step)),
      })),
    }),
  },
  {
    name: 'no waiting between steps of trays',
    apply: (day) => ({
      ...day,
      products: day.products.map((product) => ({ ...product, steps: product.steps.map((step) => ({ ...step, waitUpTo: 0 })) })),
    }),
  },
  {
    name: 'shaped within 10 minutes',
    apply: (day) => ({ ...day, doughs: day.doughs.map((dough) => ({ ...dough, shapeWithin: 10 })) }),
  },
  {
    name: 'the last person at home',
    apply: (day) => {
      const { people } = day;
      return people === undefined || people.length < 2 ? day : { ...day, people: people.slice(0, -1) };
    },
  },
];

/** The tasks and set points of a plan, judged on another day. */
export function judgedOn(day: Scenario, plan: Plan): { readonly breaches: readonly string[]; readonly cost: number } {
  const { breaches, figures } = judge(day, { tasks: plan.tasks, decks: plan.decks });
  return { breaches: breaches.map(({ rule, says }) => `${rule}: ${says}`), cost: figures.cost };
}
