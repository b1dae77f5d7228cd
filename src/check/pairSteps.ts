// Finds which task does which step of a tray or batch: the first bake in time does the first bake of the product, and so on.
import type { BatchStep, TrayStep } from '../model/steps.ts';
import type { NamedTask } from './nameTasks.ts';

export type PairedStep<Step extends BatchStep | TrayStep> = { readonly step: Step; readonly named: NamedTask };

export type Pairing<Step extends BatchStep | TrayStep> = {
  /** One for each step, in order; undefined where no task does it. */
  readonly paired: readonly (PairedStep<Step> | undefined)[];
  /** Tasks that do no step. */
  readonly spare: readonly NamedTask[];
};

export function pairSteps<Step extends BatchStep | TrayStep>(steps: readonly Step[], tasks: readonly NamedTask[]): Pairing<Step> {
  const unpaired = [...tasks].sort((a, b) => a.task.start - b.task.start || a.task.end - b.task.end);
  const paired = steps.map((step) => {
    const at = unpaired.findIndex((named) => named.task.step === step.do);
    const [named] = at === -1 ? [] : unpaired.splice(at, 1);
    return named === undefined ? undefined : { step, named };
  });
  return { paired, spare: unpaired };
}
