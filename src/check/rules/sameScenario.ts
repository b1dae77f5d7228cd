// SAME_SCENARIO: fingerprint stated = fingerprint of the scenario; without one, name, date and time zone stated are the scenario's.
import { fingerprint } from '../../model/fingerprint.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function sameScenario({ scenario, plan }: JudgedDay): readonly Finding[] {
  const stated = plan.scenario;
  if (stated === undefined) return [];
  const own = fingerprint(scenario);
  if (stated.fingerprint !== own) {
    return [{ says: `The plan was made for the scenario ${stated.fingerprint}; this one is ${own}.`, taskIds: [] }];
  }
  return (['name', 'date', 'timeZone'] as const)
    .filter((key) => stated[key] !== scenario[key])
    .map((key) => ({ says: `The plan states the ${key} "${stated[key]}"; the scenario's is "${scenario[key]}".`, taskIds: [] }));
}
