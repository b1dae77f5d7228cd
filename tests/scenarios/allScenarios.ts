// The scenario files of the repository, read the way the program reads them. Used by the scenario tests.
import { readdirSync, readFileSync } from 'node:fs';
import type { Scenario } from '../../src/model/scenario.ts';
import { readScenario } from '../../src/read/readScenario.ts';

const folder = new URL('../../scenarios/', import.meta.url);

/** Names without .yaml, sorted. */
export const scenarioNames: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.slice(0, -'.yaml'.length))
  .sort();

export function scenarioText(name: string): string {
  return readFileSync(new URL(`${name}.yaml`, folder), 'utf8');
}

/** The scenario; throws with every input error when it does not read. */
export function scenarioNamed(name: string): Scenario {
  const reading = readScenario(scenarioText(name), `${name}.yaml`);
  if (!reading.ok) throw new Error(reading.errors.map(({ code, path, says }) => `${code} ${path}: ${says}`).join('\n'));
  return reading.value;
}

export const scenariosReadme: string = readFileSync(new URL('README.md', folder), 'utf8');
