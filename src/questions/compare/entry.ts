// One day of a comparison while it is being worked on: its scenario, and its plan and capacity once they are there. Used by compare.
import { fingerprint } from '../../model/fingerprint.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { CapacityFound } from '../capacity.ts';

/** One day of a comparison. The day as it is is the first. */
export type Entry = {
  readonly title: string;
  readonly value: number | null;
  readonly scenario: Scenario;
  readonly fingerprint: string;
  plan: Plan | null;
  capacity: CapacityFound | null;
};

export function entryOf(title: string, value: number | null, scenario: Scenario): Entry {
  return { title, value, scenario, fingerprint: fingerprint(scenario), plan: null, capacity: null };
}
