// The path of checks: a scenario and anybody's plan in, the judge's verdict out.
import { BUNS_ALONE, BUNS_BY_HAND } from '../exampleDays.ts';
import type { Paths } from '../openapiShape.ts';
import { problems } from '../problemAnswers.ts';
import { schemaRef } from '../refer.ts';

export const CHECK_PATHS: Paths = {
  '/v1/checks': {
    post: {
      operationId: 'checkPlan',
      tags: ['Checks'],
      summary: 'Have a plan judged',
      description: 'The plan may be one of ours or written by hand. A plan that breaks rules is an answer, not an error.',
      requestBody: {
        description: 'A scenario and a plan for it.',
        required: true,
        content: {
          'application/json': {
            schema: schemaRef('CheckRequest'),
            examples: {
              byHand: {
                summary: 'a plan written by hand, in which the deck is too cold',
                value: { scenario: BUNS_ALONE, plan: BUNS_BY_HAND },
              },
            },
          },
        },
      },
      responses: {
        200: { description: 'The verdict.', content: { 'application/json': { schema: schemaRef('Verdict') } } },
        ...problems(400, 406, 413, 415, 422, 503),
      },
    },
  },
};
