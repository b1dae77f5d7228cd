// FLOUR_DUST: shown whenever a dough is mixed.
import type { Caution, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';

export function flourDust(_scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  if (!tasks.some((task) => task.step === 'mix')) return [];
  return [
    {
      code: 'FLOUR_DUST',
      says: 'Flour dust can cause asthma: tip low, start the bowl slowly, do not sweep it dry. Limits are 8-hour averages: measure.',
      source: 'HSE, hse.gov.uk/food/bakery.htm (UK limit 10 mg/m3 over 8 h); the handling is common practice.',
    },
  ];
}
