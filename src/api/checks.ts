// POST /v1/checks: a scenario and a plan in, the judge's verdict out.
import type { RequestHandler } from 'express';
import { z } from 'zod';
import type { InputError, Reading } from '../model/inputError.ts';
import { errorList } from '../read/errorList.ts';
import type { CodedError } from '../read/inputErrorAt.ts';
import { MAX_PLAN_VALUES } from '../read/limits.ts';
import { plainValue } from '../read/plainValue.ts';
import { schemaErrors } from '../read/schemaErrors.ts';
import { bodyText, readBytes } from './bodyText.ts';
import { jsonBody } from './jsonBody.ts';
import { bodyType, wantedType } from './mediaType.ts';
import { mustRead } from './mustRead.ts';
import type { ApiParts } from './parts.ts';

const JSON_ONLY = ['application/json'] as const;

/** The outer shape alone: what is inside is read by the readers of scenarios and plans. */
const checkRequestSchema = z.strictObject({
  scenario: z.looseObject({}).describe('A scenario.'),
  plan: z.looseObject({}).describe('A plan for it, by anybody.'),
});

type CheckRequest = z.infer<typeof checkRequestSchema>;

function wrong(errors: readonly CodedError[]): Reading<CheckRequest> {
  return { ok: false, errors: errorList(errors, [], (error) => error) };
}

/** The value without what JSON can say and a plain value cannot: forbidden keys, and depth that would end the process. */
function checkRequest(value: unknown): Reading<CheckRequest> {
  const plain = plainValue(value, MAX_PLAN_VALUES);
  if (plain.errors.length > 0) return wrong(plain.errors);
  const read = checkRequestSchema.safeParse(plain.value);
  if (read.success) return { ok: true, value: read.data };
  return wrong(schemaErrors(read.error.issues, checkRequestSchema, plain.value));
}

/** Places within the whole body. Line and column would be those of a text the client never wrote. */
function within<T>(part: string, reading: Reading<T>): Reading<T> {
  if (reading.ok) return reading;
  const errors = reading.errors.map(
    ({ code, path, says, doThis }): InputError => ({ code, path: `/${part}${path}`, says, doThis }),
  );
  return { ok: false, errors };
}

function refuseEarly(): RequestHandler {
  return (request, _response, next) => {
    wantedType(request, JSON_ONLY);
    bodyType(request, JSON_ONLY);
    next();
  };
}

export function checks(parts: ApiParts): readonly RequestHandler[] {
  const handle: RequestHandler = (request, response) => {
    const body = mustRead(checkRequest(jsonBody(bodyText(request))));
    const scenario = mustRead(within('scenario', parts.readScenarioValue(body.scenario)));
    const plan = mustRead(within('plan', parts.readWrittenPlan(JSON.stringify(body.plan), scenario)));
    response.json(parts.judge(scenario, plan));
  };
  return [refuseEarly(), readBytes, handle];
}
