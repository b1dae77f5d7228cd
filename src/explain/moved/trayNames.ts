// What people call the trays, batches, decks and persons of a plan: "Plum knot 2", "Rye dough, batch 1". Used by whatever says
// what has changed.
import type { Plan } from '../../model/plan.ts';

export type TrayNames = {
  readonly tray: (id: string) => string;
  readonly batch: (id: string) => string;
  readonly product: (id: string) => string;
  readonly person: (id: string) => string;
  readonly place: (id: string) => string;
  /** Whether there is only one deck, which need not be named. */
  readonly isOneDeck: boolean;
  /** Trays in a row: "Rye 1 to 3 and 5, Plum knot 2". */
  readonly trays: (ids: readonly string[]) => string;
};

/** "1 to 3 and 5" of numbers. */
function numbersInWords(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  const words = runs.flatMap(([from, to]) =>
    to - from > 1 ? [`${from} to ${to}`] : from === to ? [`${from}`] : [`${from}`, `${to}`],
  );
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** "knot-2" of product "knot" is number 2. */
function numberIn(id: string, of: string): string | undefined {
  const rest = id.startsWith(`${of}-`) ? id.slice(of.length + 1) : '';
  return /^\d+$/.test(rest) ? rest : undefined;
}

function withNoun(name: string, noun: string): string {
  return /\b(deck|oven|chamber|proofer|retarder|cabinet|room|fridge|bowl|mixer|bench|rack|dough)\b/i.test(name)
    ? name
    : `${name} ${noun}`;
}

/** Names of a plan; `other` is a plan of the same day with trays the first does not have. */
export function trayNames(plan: Plan, other: Plan = plan): TrayNames {
  const batches = [...plan.batches, ...other.batches];
  const { bakehouse } = plan;
  const product = (id: string): string => bakehouse.products.find((one) => one.id === id)?.name ?? id;
  const productOf = (id: string): string => batches.flatMap(({ trays }) => trays).find((tray) => tray.id === id)?.product ?? '';
  const cabinets = [...bakehouse.proofers, ...bakehouse.retarders, ...bakehouse.mixers];
  return {
    product,
    isOneDeck: bakehouse.decks.length === 1,
    tray: (id) => {
      const of = productOf(id);
      const number = numberIn(id, of);
      return number === undefined ? id : `${product(of)} ${number}`;
    },
    trays: (ids) => {
      const byProduct = new Map<string, number[]>();
      const others: string[] = [];
      for (const id of ids) {
        const number = numberIn(id, productOf(id));
        if (number === undefined) others.push(id);
        else byProduct.set(productOf(id), [...(byProduct.get(productOf(id)) ?? []), Number(number)]);
      }
      return [...[...byProduct].map(([of, numbers]) => `${product(of)} ${numbersInWords(numbers)}`), ...others].join(', ');
    },
    batch: (id) => {
      const of = batches.find((batch) => batch.id === id)?.dough ?? '';
      const number = numberIn(id, of);
      const name = withNoun(bakehouse.doughs.find((dough) => dough.id === of)?.name ?? of, 'dough');
      return number === undefined ? id : `${name}, batch ${number}`;
    },
    person: (id) => bakehouse.people.find((person) => person.id === id)?.name ?? id,
    place: (id) => {
      const deck = bakehouse.decks.find((one) => one.id === id);
      if (deck !== undefined) return withNoun(deck.name, 'deck');
      return cabinets.find((one) => one.id === id)?.name ?? id;
    },
  };
}
