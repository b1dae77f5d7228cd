// The body of a request that sends a scenario. Used where one is planned and where one is kept.
import { BUNS_ALONE, BUNS_ALONE_YAML } from '../exampleDays.ts';
import type { RequestBody } from '../openapiShape.ts';
import { schemaRef } from '../refer.ts';

export const SCENARIO_BODY: RequestBody = {
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
};
