// COOLING: shown when a product with a filling to be kept cold is baked and must come down again.
import type { Caution, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';

export function cooling(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  const filled = new Set(scenario.products.filter((product) => product.coldFilling).map((product) => product.id));
  const isBaked = tasks.some((task) => task.step === 'bake' && task.product !== undefined && filled.has(task.product));
  if (!isBaked) return [];
  return [
    {
      code: 'COOLING',
      says: 'Filled goods kept for later: from 57 C to 21 C within 2 h and to 5 C within 6 h in all. Measure in the filling.',
      source: 'FDA Food Code 3-501.14 (135, 70 and 41 F).',
    },
  ];
}
