// A scenario in a text: read in both languages, so that every error has its line and column.
import type { Scenario } from '../../model/scenario.ts';
import { readScenario } from '../../read/readScenario.ts';
import { jsonBody } from '../jsonBody.ts';
import { mustRead } from '../mustRead.ts';

/** `name`: how errors call the text. What is said to be JSON must be no other YAML. */
export function scenarioIn(text: string, isJson: boolean, name: string): Scenario {
  const reading = readScenario(text, name);
  if (isJson) jsonBody(text, () => (reading.ok ? [] : reading.errors));
  return mustRead(reading);
}
