// Does light work, whichever it is. Run by the threads of the service (jobs/workThread.ts).
import { drawComparison } from '../../draw/comparison/drawComparison.ts';
import { drawPlan } from '../../draw/drawPlan.ts';
import { whatToDo } from '../../draw/whatToDo.ts';
import { comparisonSchema } from '../../model/comparison.ts';
import { type Plan, planSchema } from '../../model/plan.ts';
import { calendarOf } from '../calendar.ts';
import { doingList } from '../doingList.ts';
import { Problem } from '../problem.ts';
import { askIn } from './askIn.ts';
import { verdictOn } from './check.ts';
import { eventsIn } from './happened.ts';
import type { Answer, Done, Given, LightKind } from './lightWork.ts';
import { posting, postingOfWork } from './posting.ts';
import { scenarioIn } from './scenarioIn.ts';

type Doers = { readonly [K in LightKind]: (given: Given<K>) => Answer<K> };

function planIn(json: string): Plan {
  return planSchema.parse(JSON.parse(json));
}

function listOf(plan: Plan): string {
  return doingList(plan, whatToDo(plan));
}

const DOERS: Doers = {
  check: ({ text }) => JSON.stringify(verdictOn(text)),
  ask: (given) => JSON.stringify(askIn(given)),
  scenario: ({ text, isJson, name }) => JSON.stringify(scenarioIn(text, isJson, name)),
  posting,
  'posting of work': postingOfWork,
  happened: eventsIn,
  pages: ({ plan }) => drawPlan(planIn(plan)),
  curves: ({ comparison }) => drawComparison(comparisonSchema.parse(JSON.parse(comparison))),
  list: ({ plan }) => listOf(planIn(plan)),
  calendar: ({ plan, instant }) => calendarOf(planIn(plan), instant),
};

/** Throws faults of ours alone. */
export function doLightWork<K extends LightKind>(kind: K, given: Given<K>): Done<K> {
  try {
    return { ok: true, answer: DOERS[kind](given) };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const { status, message: detail, errors, headers } = error;
    return { ok: false, refusal: { status, detail, errors, headers } };
  }
}
