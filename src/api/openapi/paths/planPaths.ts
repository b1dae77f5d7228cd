// The paths of plans: ask for one, follow it, fetch it in every form, stop it.
import { BUNS_ALONE, BUNS_ALONE_YAML } from '../exampleDays.ts';
import type { Paths } from '../openapiShape.ts';
import { schemaRef } from '../refer.ts';
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
  body: {
    description: 'A scenario, as JSON or as YAML.',
    required: true,
    content: {
      'application/json': {
        schema: schemaRef('Scenario'),
        examples: { bunsAlone: { summary: 'twenty buns and one oven', value: BUNS_ALONE } },
      },
      'application/yaml': {
        schema: { type: 'string', description: 'A scenario in YAML 1.2 (RFC 9512).' },
        examples: { bunsAlone: { summary: 'the same day as people write it', value: BUNS_ALONE_YAML } },
      },
    },
  },
  forms: [SHEET_FORM, OVEN_CALENDAR_FORM, LIST_FORM],
});
