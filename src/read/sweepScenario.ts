// A sweep: one number of a scenario set to each value of a range. The scenarios, or every error at once.
import type { InputError, Reading } from '../model/inputError.ts';
import type { Scenario } from '../model/scenario.ts';
import { findPlace } from './findPlace.ts';
import { inputErrorAt } from './inputErrorAt.ts';
import { patchScenario } from './patchScenario.ts';
import { placeName } from './placeName.ts';
import { shown } from './shown.ts';

/** Which number, and from which to which value; whole numbers, both ends included. */
export type Sweep = { readonly pointer: string; readonly from: number; readonly to: number; readonly step: number };

export type SweptScenario = { readonly value: number; readonly scenario: Scenario };

export type SweptScenarios = {
  /** The number in words: shelves of proofer small. */
  readonly place: string;
  /** What it is in the scenario itself. */
  readonly now: number;
  readonly swept: readonly SweptScenario[];
};

export function valuesOf({ from, to, step }: Sweep): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);
}

function noNumber(sweep: Sweep, value: unknown): InputError {
  const says = `At "${sweep.pointer}" stands ${shown(value)}, and only a number can be swept.`;
  const doThis = 'Name a number of the scenario, as /equipment/proofers/0/shelves; for anything else write changes.';
  return inputErrorAt('NOT_SWEPT', sweep.pointer, says, doThis);
}

/** Without quotes, and "proofer proofer" once. */
function plainName(name: string): string {
  return name.replaceAll('"', '').replaceAll(/\b(\w+) \1\b/g, '$1');
}

/** Makes a scenario for every value. The paths of errors are those of the scenario. */
export function sweepScenario(scenario: Scenario, sweep: Sweep): Reading<SweptScenarios> {
  const { pointer } = sweep;
  const found = findPlace(scenario, pointer, 'that is there');
  if (!found.ok) return { ok: false, errors: [inputErrorAt(found.code, pointer, found.says, found.doThis)] };
  if (typeof found.value !== 'number') return { ok: false, errors: [noNumber(sweep, found.value)] };
  const place = plainName(placeName(scenario, found.segments));
  const made = valuesOf(sweep).map((value) => ({
    value,
    patched: patchScenario(scenario, [{ op: 'replace', path: pointer, value }]),
  }));
  const errors = made.flatMap(({ value, patched }) => {
    if (patched.ok) return [];
    if ('fault' in patched) return [inputErrorAt(patched.fault.code, pointer, patched.fault.says, patched.fault.doThis)];
    return patched.errors.map((error) => ({ ...error, says: `With ${value} as ${place}: ${error.says}` }));
  });
  if (errors.length > 0) return { ok: false, errors };
  const swept = made.flatMap(({ value, patched }) => (patched.ok ? [{ value, scenario: patched.scenario }] : []));
  return { ok: true, value: { place, now: found.value, swept } };
}
