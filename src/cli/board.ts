// Where `post` posts a plan. storeBoard.ts posts into a file, serviceBoard.ts through a service; either refuses when another plan was
// posted meanwhile.
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { BadInput } from './badInput.ts';

export type Board = {
  /** Posts the plan and says so in a sentence. Throws with nothing changed. */
  readonly post: (scenario: Scenario, plan: Plan, pages: readonly string[]) => Promise<string>;
  readonly close: () => Promise<void>;
};

/** When the posted plan is no longer the one that was there before planning began. */
export function postedMeanwhile(date: string): BadInput {
  const says = 'another plan was posted for this day while this one was made; that one stays';
  return new BadInput(date, [
    { code: 'POSTED_MEANWHILE', path: '', says, doThis: 'look at it, and post again if you still want to' },
  ]);
}
