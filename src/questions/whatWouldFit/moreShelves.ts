// The change "more shelves": in a proofer, or a cold one, that suits the trays. Used by whatWouldFit.

import { inWords } from '../../explain/why/words.ts';
import type { Scenario } from '../../model/scenario.ts';
import { rangeOf } from '../../model/units.ts';
import { orderedTrays } from '../capacity/scaledOrders.ts';
import type { Ground, LadderOf, Variant } from './ladder.ts';
import { productsOf } from './wantedProducts.ts';

type Cabinet = {
  readonly path: string;
  readonly name: string;
  readonly word: 'proofer' | 'retarder';
  readonly shelves: number;
  readonly traysPerShelf: number;
  readonly temperatureC: number;
};

type CabinetStep = { readonly word: Cabinet['word']; readonly temperatureC: number | [number, number] | undefined };

function cabinetsOf({ equipment }: Scenario): readonly Cabinet[] {
  const { proofers, retarders } = equipment;
  const named = (list: typeof proofers, key: string, word: Cabinet['word']): readonly Cabinet[] =>
    list.map(({ id, name, shelves, traysPerShelf, temperatureC }, index) => ({
      path: `/equipment/${key}/${index}/shelves`,
      name: name ?? id,
      word,
      shelves,
      traysPerShelf,
      temperatureC,
    }));
  return [...named(proofers, 'proofers', 'proofer'), ...named(retarders, 'retarders', 'retarder')];
}

/** Steps of the wanted trays, and of their batches, that need a shelf. */
function cabinetSteps(ground: Ground): readonly CabinetStep[] {
  const products = productsOf(ground);
  const doughs = ground.scenario.doughs.filter(({ id }) => products.some(({ dough }) => dough === id));
  const ofTrays = products.flatMap(({ steps }) =>
    steps.flatMap((step): CabinetStep[] => {
      if (step.do === 'proof') return [{ word: 'proofer', temperatureC: step.temperatureC }];
      return step.do === 'retard' ? [{ word: 'retarder', temperatureC: step.temperatureC }] : [];
    }),
  );
  const ofBatches = doughs.flatMap(({ steps }) =>
    steps.flatMap((step): CabinetStep[] =>
      step.do === 'bulk' && step.where === 'retarder' ? [{ word: 'retarder', temperatureC: step.temperatureC }] : [],
    ),
  );
  return [...ofTrays, ...ofBatches];
}

function suits(cabinet: Cabinet, step: CabinetStep): boolean {
  if (cabinet.word !== step.word) return false;
  if (step.temperatureC === undefined) return true;
  const { min, max } = rangeOf(step.temperatureC);
  return cabinet.temperatureC >= min && cabinet.temperatureC <= max;
}

function variantFor(cabinet: Cabinet, more: number): Variant {
  const { path, name, word, shelves, traysPerShelf } = cabinet;
  const count = `${inWords(more)} more ${more === 1 ? 'shelf' : 'shelves'}`;
  const trays = traysPerShelf === 1 ? '' : ` of ${inWords(traysPerShelf)} trays each`;
  const lower = name.toLowerCase();
  const named = lower.includes(word) ? name : `${word} ${name}`;
  const where = lower === word ? `the ${word}` : named;
  return {
    amount: more,
    operations: [{ op: 'replace', path, value: shelves + more }],
    does: `Have ${count}${trays} in ${where}, ${shelves + more} instead of ${shelves}`,
    earlierBy: 0,
  };
}

export const moreShelves: LadderOf = (ground) => {
  const steps = cabinetSteps(ground);
  if (steps.length === 0) return 'Its trays need no shelf.';
  const fitting = cabinetsOf(ground.scenario).filter((cabinet) => steps.some((step) => suits(cabinet, step)));
  if (fitting.length === 0) return 'No proofer suits its trays.';
  return {
    kind: 'more-shelves',
    // No tray, nor its batch before it, ever takes two places.
    top: orderedTrays(ground.scenario),
    first: 1,
    at: (more) => fitting.map((cabinet) => variantFor(cabinet, more)),
    topWords: 'A shelf more for every tray of the day',
    isRising: true,
  };
};
