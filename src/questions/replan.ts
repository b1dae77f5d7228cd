// Plans the rest of a day anew, from the plan it had, the minute it is and what has happened: what has begun stays, what is decided
// stays, the rest moves as little as it must.

import { movedSteps } from '../explain/moved/movedSteps.ts';
import { changesSince } from '../explain/moved.ts';
import type { Happened } from '../model/happened.ts';
import type { Plan } from '../model/plan.ts';
import type { ReplanAnswer } from '../model/replanAnswer.ts';
import type { Scenario } from '../model/scenario.ts';
import { type Asking, type AskLimits, ask } from './asking.ts';
import { dayAt, type HappenedError } from './replan/dayAt.ts';

export type Replanned =
  | { readonly ok: true; readonly answer: ReplanAnswer }
  /** What is told to have happened cannot be. */
  | { readonly ok: false; readonly errors: readonly HappenedError[] };

/** What there is to plan from: the minute of the day, and what has happened by then. */
export type At = { readonly now: number; readonly happened: Happened };

function unchanged(scenario: Scenario, plan: Plan, now: number): Replanned {
  const movePrice = scenario.underway?.movePrice ?? 0;
  return {
    ok: true,
    answer: { now, isUnchanged: true, plan, scenario, changes: [], movedTasks: 0, movePrice, movesCost: 0, told: [] },
  };
}

/** `plan` keeps every rule of `scenario`; `happened` was read for both. With nothing told the plan comes back as it is. */
export async function replan(
  scenario: Scenario,
  plan: Plan,
  { now, happened }: At,
  asking: Asking,
  limits: Pick<AskLimits, 'effort'> = {},
): Promise<Replanned> {
  if (happened.happened.length === 0 && happened.keep.length === 0) return unchanged(scenario, plan, now);
  const day = dayAt(scenario, plan, now, happened);
  if (!day.ok) return day;
  const after = await ask(day.scenario, asking, { ...limits, startFrom: plan });
  const { movePrice } = day.scenario.underway;
  const steps = movedSteps(day.scenario, after);
  const marked = { ...after, underway: { now, moved: steps.map(({ step: { task, from } }) => ({ task, from })) } };
  return {
    ok: true,
    answer: {
      now,
      isUnchanged: false,
      plan: marked,
      scenario: day.scenario,
      changes: [...changesSince(plan, after, day.scenario, day)],
      movedTasks: steps.length,
      movePrice,
      movesCost: movePrice * steps.length,
      told: [...day.told],
    },
  };
}
