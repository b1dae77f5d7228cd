// ALLERGENS: the groups the baker stated for the products planned. What is not stated is not known here.
import type { Caution, Task } from '../../model/plan.ts';
import { ALLERGENS, type Allergen, type Product, type Scenario } from '../../model/scenario.ts';
import { sayNames, shortName } from './longestSays.ts';

const SOURCE = 'As stated in the scenario; groups of Regulation (EU) No 1169/2011, Annex II.';

/** Groups of a product: its own and its dough's. */
function groupsOf(scenario: Scenario, product: Product): ReadonlySet<Allergen> {
  const dough = scenario.doughs.find((each) => each.id === product.dough);
  return new Set([...product.allergens, ...(dough?.allergens ?? [])]);
}

export function allergensStated(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  const planned = new Set(tasks.map((task) => task.product));
  const products = scenario.products
    .filter((product) => planned.has(product.id))
    .map((product) => ({ name: shortName(product.name ?? product.id), groups: groupsOf(scenario, product) }));
  const stated = ALLERGENS.map((group) => ({
    group,
    names: products.filter((each) => each.groups.has(group)).map((each) => each.name),
  }));
  const inAll = stated.filter(({ names }) => names.length === products.length).map(({ group }) => group);
  const inSome = stated.filter(({ names }) => names.length > 0 && names.length < products.length);
  if (products.length === 0 || inAll.length + inSome.length === 0) return [];
  return [
    ...(inAll.length > 0 ? [{ code: 'ALLERGENS', says: sayNames('In every product:', inAll), source: SOURCE }] : []),
    ...inSome.map(({ group, names }) => ({ code: 'ALLERGENS', says: sayNames(`Contains ${group}:`, names), source: SOURCE })),
    {
      code: 'ALLERGENS',
      says: 'Baking does not destroy allergens. The plan does not sort work by them: order of work and cleaning between are yours to decide.',
      source: 'Codex Alimentarius, CXC 80-2020, introduction.',
    },
  ];
}
