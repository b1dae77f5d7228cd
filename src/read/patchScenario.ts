// A change to a scenario by JSON Patch (RFC 6902): the changed scenario, or every error of it. Used for changes and sweeps.
import type { PatchOperation } from '../model/changes.ts';
import type { InputError } from '../model/inputError.ts';
import type { Scenario } from '../model/scenario.ts';
import { type PatchFault, patchValue } from './patchValue.ts';
import { readScenarioValue } from './readScenario.ts';

export type PatchedScenario =
  | { readonly ok: true; readonly scenario: Scenario }
  /** An operation that cannot be done. */
  | { readonly ok: false; readonly fault: PatchFault }
  /** The changed scenario is unsound; the paths are those of the changed scenario. */
  | { readonly ok: false; readonly errors: readonly InputError[] };

/** Changes a scenario that has been read; what its text leaves to defaults is there to be changed. */
export function patchScenario(scenario: Scenario, patch: readonly PatchOperation[]): PatchedScenario {
  const patched = patchValue(scenario, patch);
  if (!patched.ok) return patched;
  const reading = readScenarioValue(patched.value);
  return reading.ok ? { ok: true, scenario: reading.value } : { ok: false, errors: reading.errors };
}
