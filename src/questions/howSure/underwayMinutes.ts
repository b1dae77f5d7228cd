// Minutes that steps of a day under way need beyond what the scenario states. Nothing for a day that has not begun.
import type { Scenario } from '../../model/scenario.ts';
import type { StepKind } from '../../model/steps.ts';

export type MoreMinutes = { readonly least: number; readonly most: number };

const NONE: MoreMinutes = { least: 0, most: 0 };

/** By tray or batch, kind of step, and which of that kind, from 1. */
export function underwayMinutes(scenario: Scenario): (owner: string, step: StepKind, ordinal: number) => MoreMinutes {
  const known = new Map(
    (scenario.underway?.tasks ?? []).map(({ tray, batch, step, ordinal, moreMinutes, overrunMinutes }) => [
      `${tray ?? batch} ${step} ${ordinal}`,
      { least: moreMinutes, most: moreMinutes + overrunMinutes },
    ]),
  );
  return (owner, step, ordinal) => known.get(`${owner} ${step} ${ordinal}`) ?? NONE;
}
