// ACRYLAMIDE: shown when a planned bake may run above 120 C.

import type { Caution, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { rangeOf } from '../../model/units.ts';

/** Above this, in C, excluded, acrylamide mainly forms (Regulation (EU) 2017/2158, recital 3). */
const FORMS_ABOVE_C = 120;

export function acrylamide(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  const baked = new Set(tasks.filter((task) => task.step === 'bake').map((task) => task.product));
  const isHot = scenario.products
    .filter((product) => baked.has(product.id))
    .some((product) => product.steps.some((step) => step.do === 'bake' && rangeOf(step.temperatureC).max > FORMS_ABOVE_C));
  if (!isHot) return [];
  return [
    {
      code: 'ACRYLAMIDE',
      says: 'Acrylamide forms above 120 C in a dry crust: bake to golden, not dark; keep a colour card by the oven.',
      source: 'Regulation (EU) 2017/2158, recital 3; the colour card is common practice.',
    },
  ];
}
