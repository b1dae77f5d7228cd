// The door for scenarios: text or parsed JSON in, a trusted scenario or every error at once out. Used by the command line and the API.
import type { Reading } from '../model/inputError.ts';
import { type Scenario, scenarioSchema } from '../model/scenario.ts';
import { crossErrors } from './crossChecks.ts';
import { errorList } from './errorList.ts';
import type { CodedError } from './inputErrorAt.ts';
import { MAX_TEXT_BYTES, MAX_VALUES } from './limits.ts';
import { partsOf } from './parts.ts';
import { plainText } from './plainText.ts';
import { plainValue } from './plainValue.ts';
import { repeatsKeys } from './repeatsKeys.ts';
import { schemaErrors } from './schemaErrors.ts';
import { textGuard } from './textGuard.ts';

type Read = { readonly scenario: Scenario | undefined; readonly errors: readonly CodedError[] };

function scenarioOf(value: unknown): Read {
  const result = scenarioSchema.safeParse(value);
  const ofSchema = result.success ? [] : schemaErrors(result.error.issues, scenarioSchema, value);
  return { scenario: result.data, errors: [...ofSchema, ...crossErrors(partsOf(value, result.data))] };
}

/** JSON that is right: read several times faster so than as YAML. Null for all else: only its text can tell what is wrong and where. */
function rightJson(text: string): Scenario | null {
  if (!/^\s*\{/.test(text) || textGuard(text, MAX_TEXT_BYTES, 'The file').length > 0) return null;
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

/** Reads a scenario in YAML 1.2 or JSON. Errors carry line and column. `fileName` names the file in sentences. */
export function readScenario(text: string, fileName = 'The file'): Reading<Scenario> {
  const right = rightJson(text);
  if (right !== null) return { ok: true, value: right };
  const plain = plainText(text, fileName);
  if (!plain.ok) return plain;
  const { value, refused, list } = plain.value;
  const { scenario, errors } = scenarioOf(value);
  if (scenario !== undefined && errors.length === 0 && refused.length === 0) return { ok: true, value: scenario };
  return { ok: false, errors: list(errors) };
}

/** Reads a scenario from a parsed JSON value: the same errors without line and column. */
export function readScenarioValue(value: unknown): Reading<Scenario> {
  const plain = plainValue(value, MAX_VALUES);
  const { scenario, errors } = scenarioOf(plain.value);
  if (scenario !== undefined && errors.length === 0 && plain.errors.length === 0) return { ok: true, value: scenario };
  return { ok: false, errors: errorList(plain.errors, errors, (error) => error) };
}
