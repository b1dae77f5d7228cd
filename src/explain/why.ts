// What can be read off a finished plan about why it is as it is: late and left-out trays, the busiest place, the bound. Solves nothing.
// Used by the why command.
import { judgedDayOf } from '../check/judgedDay.ts';
import { fingerprint } from '../model/fingerprint.ts';
import type { Scenario } from '../model/scenario.ts';
import type { Why } from '../model/why.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import { busiestOfDay } from './busiest.ts';
import { whyTrays } from './why/whyTrays.ts';
import { capital } from './why/words.ts';

/** Of a plan of a whole day that has passed the judge. */
export function whyOf(scenario: Scenario, plan: WrittenPlan): Why {
  const day = judgedDayOf(scenario, plan);
  const trays = whyTrays(day);
  const { bound, score } = plan;
  const isProved = score?.cost !== undefined && score.cost === score.lowerBound;
  const head = isProved ? 'No plan is cheaper' : `No plan costs less than ${score?.lowerBound ?? 'the bound'}`;
  return {
    scenario: { name: scenario.name, date: scenario.date, fingerprint: fingerprint(scenario) },
    isOnTime: trays.length === 0,
    trays,
    busiest: busiestOfDay(day),
    bound: bound === undefined ? null : { argument: bound.argument, says: `${head}. ${capital(bound.says)}` },
  };
}
