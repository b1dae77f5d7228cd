// /v1/plans: a scenario in, a plan out, as data, as pages of the sheet, as a calendar or as the list of what to do.
import type { Scenario } from '../../model/scenario.ts';
import { bodyText } from '../bodyText.ts';
import { jsonBody } from '../jsonBody.ts';
import { bodyType } from '../mediaType.ts';
import { mustRead } from '../mustRead.ts';
import type { ApiParts } from '../parts.ts';
import { planQuery } from '../planQuery.ts';
import { repeatsKeys } from '../repeatsKeys.ts';
import { PLAN_FORMATS } from './planFormats.ts';
import type { WorkKindRoutes } from './workKindRoutes.ts';

const READS = ['application/json', 'application/yaml'] as const;

/** A scenario in JSON that is right: several times faster than as text. Null where only its text can tell what is wrong. */
function rightJson(text: string, { readScenarioValue }: ApiParts): Scenario | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  const reading = readScenarioValue(value);
  return reading.ok && !repeatsKeys(text, value) ? reading.value : null;
}

/** Otherwise read as text in both languages, so that every error has its line and column. */
function scenarioIn(text: string, isJson: boolean, parts: ApiParts): Scenario {
  const right = isJson ? rightJson(text, parts) : null;
  if (right !== null) return right;
  const reading = parts.readScenario(text, 'The body');
  if (isJson) jsonBody(text, () => (reading.ok ? [] : reading.errors));
  return mustRead(reading);
}

export function plans(parts: ApiParts): WorkKindRoutes {
  return {
    kind: 'plan',
    refuseEarly: (request) => {
      bodyType(request, READS);
      planQuery(request.query, parts.limits);
    },
    readAsk: (request) => {
      const limits = planQuery(request.query, parts.limits);
      const asked = bodyText(request);
      const scenario = scenarioIn(asked, bodyType(request, READS) === 'application/json', parts);
      return { ask: { kind: 'plan', scenario, limits }, asked };
    },
    formats: PLAN_FORMATS,
  };
}
