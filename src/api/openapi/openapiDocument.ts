// The OpenAPI 3.1 document of the service, put together from its files of paths. Served and shown by openapiRoutes.ts.
import { HEADERS } from './answerHeaders.ts';
import type { OpenapiDocument } from './openapiShape.ts';
import { PARAMETERS } from './parameters.ts';
import { CHECK_PATHS } from './paths/checkPaths.ts';
import { DAY_PATHS } from './paths/dayPaths.ts';
import { PLAN_PATHS } from './paths/planPaths.ts';
import { QUESTION_PATHS } from './paths/questionPaths.ts';
import { SCENARIO_PATHS } from './paths/scenarioPaths.ts';
import { SERVICE_PATHS } from './paths/servicePaths.ts';
import { PROBLEM_ANSWERS } from './problemAnswers.ts';
import { SCHEMAS } from './schemas.ts';

const DESCRIPTION = `Times of a plan are whole minutes from the start of the day; a span holds its first minute and not its last. Units stand \
in the names of fields: C is °C, G and Kg are grams and kilograms.

Work that takes long is accepted first (202) and fetched later; with \`Prefer: wait=n\` the answer to the request waits for it.

Every address answers HEAD as GET without the body, and a method it does not take with 405 and \`Allow\`.`;

const TAGS = [
  {
    name: 'Plans',
    description: 'A scenario in, a plan out: when every step of every batch and tray is done, where and by whom.',
  },
  {
    name: 'Days',
    description: 'The plan posted for a day, which everybody in the room reads, and what has happened on the day.',
  },
  { name: 'Scenarios', description: 'Days as they are written, kept under names with their history.' },
  { name: 'Fits', description: 'Whether more fits a day.' },
  { name: 'Comparisons', description: 'A day beside the same day with something changed.' },
  { name: 'Re-plans', description: 'The rest of a day that did not go as planned.' },
  { name: 'Checks', description: 'The judge shares no code with the search, and judges any plan.' },
  { name: 'The service', description: 'Whether it is well, and what it can do.' },
] as const;

/** The parameters, with the longest search this service allows. */
function parametersWithin(mostSeconds: number): typeof PARAMETERS {
  const { Seconds } = PARAMETERS;
  return { ...PARAMETERS, Seconds: { ...Seconds, schema: { ...Seconds.schema, maximum: mostSeconds } } };
}

/** @param mostSeconds - longest search anybody may ask for. */
export function openapiDocument(version: string, mostSeconds: number): OpenapiDocument {
  return {
    openapi: '3.1.1',
    info: {
      title: 'The ovenward service',
      version,
      summary: "Plans a small bakery's day, judges plans, and keeps the posted one.",
      description: DESCRIPTION,
      license: { name: 'MIT', identifier: 'MIT' },
    },
    jsonSchemaDialect: 'https://json-schema.org/draft/2020-12/schema',
    servers: [{ url: '/', description: 'The service that answered with this document.' }],
    // Without a token the service asks nobody for one.
    security: [{ token: [] }, {}],
    tags: TAGS,
    paths: { ...PLAN_PATHS, ...DAY_PATHS, ...SCENARIO_PATHS, ...QUESTION_PATHS, ...CHECK_PATHS, ...SERVICE_PATHS },
    components: {
      schemas: SCHEMAS,
      parameters: parametersWithin(mostSeconds),
      headers: HEADERS,
      responses: PROBLEM_ANSWERS,
      securitySchemes: {
        token: {
          type: 'http',
          scheme: 'bearer',
          description: 'The token the service was started with, where it was (RFC 6750).',
        },
      },
    },
  };
}
