// Every limit of a day that can be lifted and that can bind it. Used by clash. Lifted in the order of this list: hours after the
// day, hands after hours.
import type { Scenario } from '../../model/scenario.ts';
import { dayLimits } from './dayLimits.ts';
import type { Limit } from './limit.ts';
import { peopleLimits } from './peopleLimits.ts';
import { placeLimits } from './placeLimits.ts';
import { standingLimits } from './standingLimits.ts';

export function limitsOf(scenario: Scenario): readonly Limit[] {
  return [...dayLimits(scenario), ...placeLimits(scenario), ...standingLimits(scenario), ...peopleLimits(scenario)];
}
