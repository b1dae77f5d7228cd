// The door for a file of changes: text in; each change with the scenario it makes, or every error at once, out.
import { type Change, changesSchema } from '../model/changes.ts';
import type { InputError, Reading } from '../model/inputError.ts';
import type { Scenario } from '../model/scenario.ts';
import { ERROR_CODES } from './errorCodes.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { type PatchedScenario, patchScenario } from './patchScenario.ts';
import { plainText } from './plainText.ts';
import { pointerOf, segmentsOf } from './pointer.ts';
import { schemaErrors } from './schemaErrors.ts';

/** A change and the scenario it makes. */
export type ChangedScenario = { readonly title: string; readonly scenario: Scenario };

const FILE = 'The file of changes';

/** Where in the file the cause of an error in the changed scenario stands: the last operation that touched the place. */
function causeOf(path: string, change: Change, at: string): string {
  const wanted = segmentsOf(path);
  const causes = change.patch.flatMap((operation, index) => {
    const own = segmentsOf(operation.path);
    const isAround = own.length <= wanted.length && own.every((name, depth) => name === wanted[depth] || name === '-');
    if (!isAround) return [];
    const inner = operation.value === undefined ? '' : `/value${pointerOf(wanted.slice(own.length))}`;
    return [`${at}/patch/${index}${inner}`];
  });
  return causes.at(-1) ?? at;
}

function isCoded(error: InputError): error is CodedError {
  return error.code in ERROR_CODES;
}

/** Errors of one code with one cause are told once: the first, with the other places it shows at. */
function errorsOfScenario(errors: readonly InputError[], change: Change, at: string): readonly CodedError[] {
  const byCause = new Map<string, { readonly first: CodedError; readonly others: string[] }>();
  for (const error of errors.filter(isCoded)) {
    const path = causeOf(error.path, change, at);
    const same = byCause.get(`${error.code} ${path}`);
    if (same === undefined) byCause.set(`${error.code} ${path}`, { first: { ...error, path }, others: [] });
    else same.others.push(error.path);
  }
  return [...byCause.values()].map(({ first, others }) => {
    const also = others.length === 0 ? '' : ` The same at ${others.join(', ')} of the changed scenario.`;
    return { ...first, says: `Under "${change.title}": ${first.says}${also}` };
  });
}

function errorsOfChange(patched: PatchedScenario & { readonly ok: false }, change: Change, at: string): readonly CodedError[] {
  if ('errors' in patched) return errorsOfScenario(patched.errors, change, at);
  const { operation, member, code, says, doThis } = patched.fault;
  const place = member === 'op' ? `${at}/patch/${operation}` : `${at}/patch/${operation}/${member}`;
  return [inputErrorAt(code, place, `Under "${change.title}": ${says}`, doThis)];
}

/** Reads changes in YAML or JSON and makes each to the scenario. Errors carry line and column in the file of changes. */
export function readChanges(text: string, scenario: Scenario): Reading<readonly ChangedScenario[]> {
  const plain = plainText(text, FILE);
  if (!plain.ok) return plain;
  const { value, refused, list } = plain.value;
  const result = changesSchema.safeParse(value);
  if (!result.success) return { ok: false, errors: list(schemaErrors(result.error.issues, changesSchema, value)) };
  if (refused.length > 0) return { ok: false, errors: list([]) };
  const read = result.data.changes.map((change, index) => ({
    change,
    at: `/changes/${index}`,
    patched: patchScenario(scenario, change.patch),
  }));
  const errors = read.flatMap(({ change, at, patched }) => (patched.ok ? [] : errorsOfChange(patched, change, at)));
  if (errors.length > 0) return { ok: false, errors: list(errors) };
  return {
    ok: true,
    value: read.flatMap(({ change, patched }) => (patched.ok ? [{ title: change.title, scenario: patched.scenario }] : [])),
  };
}
