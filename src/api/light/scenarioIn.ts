// A scenario in a text: read in both languages, so that every error has its line and column; or, where it is JSON and right, fast.
import type { Scenario } from '../../model/scenario.ts';
import { readScenario, readScenarioValue } from '../../read/readScenario.ts';
import { jsonBody } from '../jsonBody.ts';
import { mustRead } from '../mustRead.ts';
import { repeatsKeys } from './repeatsKeys.ts';

/** `name`: how errors call the text. What is said to be JSON must be no other YAML. */
export function scenarioIn(text: string, isJson: boolean, name: string): Scenario {
  const reading = readScenario(text, name);
  if (isJson) jsonBody(text, () => (reading.ok ? [] : reading.errors));
  return mustRead(reading);
}

/** A scenario in JSON that is right: several times faster than as text. Null where only its text can tell what is wrong. */
function rightJson(text: string): Scenario | null {
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

/** As scenarioIn, fast where it can be. */
export function scenarioSoon(text: string, isJson: boolean, name: string): Scenario {
  return (isJson ? rightJson(text) : null) ?? scenarioIn(text, isJson, name);
}
