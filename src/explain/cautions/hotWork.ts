// HOT_WORK: shown whenever anything is baked.
import type { Caution, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';

export function hotWork(_scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  if (!tasks.some((task) => task.step === 'bake')) return [];
  return [
    {
      code: 'HOT_WORK',
      says: 'Ovens, trays and steam burn: dry mitts, covered arms, stand aside when a door opens. Drink water and rest in the cool.',
      source: "Afshari et al. 2019, IJOEM 1582 (heat above the limit at every baker's station); the handling is common practice.",
    },
  ];
}
