// The cautions a plan touches, in a fixed order: shown at the foot of the sheet, never deciding. Used by planning.ts.
import type { Caution, Task } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { acrylamide } from './cautions/acrylamide.ts';
import { allergensStated } from './cautions/allergensStated.ts';
import { coldFilling } from './cautions/coldFilling.ts';
import { cooling } from './cautions/cooling.ts';
import { electricalLoad } from './cautions/electricalLoad.ts';
import { flourDust } from './cautions/flourDust.ts';
import { hotWork } from './cautions/hotWork.ts';
import { restAfterWork } from './cautions/restAfterWork.ts';
import { workingHours } from './cautions/workingHours.ts';

const ALL = [hotWork, workingHours, restAfterWork, allergensStated, coldFilling, cooling, acrylamide, flourDust, electricalLoad];

/** Every caution that the tasks of a plan touch; none when nothing is planned. Each says at most 160 characters. */
export function cautionsFor(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  return ALL.flatMap((caution) => caution(scenario, tasks));
}
