// The paths of plans: ask for one, follow it, fetch it in every form, stop it.
import type { Paths } from '../openapiShape.ts';
import { SCENARIO_BODY } from './scenarioBody.ts';
import { LIST_FORM, OVEN_CALENDAR_FORM, SHEET_FORM, workPaths } from './workPaths.ts';

export const PLAN_PATHS: Paths = workPaths({
  at: '/v1/plans',
  id: 'plan',
  tag: 'Plans',
  word: 'a plan',
  work: 'PlanWork',
  answer: 'Plan',
  asks: {
    summary: 'Ask for a plan of a day',
    description:
      'A plan may have trays late or left out; it says so in `holds`, `score` and `leftOut`. Every plan has passed the judge.',
  },
  body: SCENARIO_BODY,
  forms: [SHEET_FORM, OVEN_CALENDAR_FORM, LIST_FORM],
});
