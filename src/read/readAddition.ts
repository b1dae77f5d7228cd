// The door for what is to be added to a day: a file, or orders given one by one; the day with it, or every error at once, out.
import { type Addition, additionSchema } from '../model/addition.ts';
import type { InputError, Reading } from '../model/inputError.ts';
import { type Order, type Scenario, scenarioSchema } from '../model/scenario.ts';
import { crossErrors } from './crossChecks.ts';
import { errorList } from './errorList.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { partsOf } from './parts.ts';
import { childOf } from './placeName.ts';
import { plainText } from './plainText.ts';
import { pointerOf, segmentsOf } from './pointer.ts';
import { schemaErrors } from './schemaErrors.ts';
import { shown } from './shown.ts';

const LISTS = ['doughs', 'products', 'orders'] as const;
const SINGULAR = { doughs: 'dough', products: 'product', orders: 'order' } as const;

function listOf(value: unknown, name: (typeof LISTS)[number]): readonly unknown[] {
  const list = childOf(value, name);
  return Array.isArray(list) ? list : [];
}

/** The scenario with the lists of the addition, sound or not, behind its own. */
function joined(scenario: Scenario, addition: unknown): Record<string, unknown> {
  const lists = LISTS.map((name) => [name, [...scenario[name], ...listOf(addition, name)]] as const);
  return { ...scenario, ...Object.fromEntries(lists) };
}

/** An error of the whole day, told where it stands in the addition: entries and orders counted there. */
function inAddition(error: CodedError, scenario: Scenario, addition: unknown): CodedError {
  const [first = '', second = '', ...rest] = segmentsOf(error.path);
  const name = LISTS.find((list) => list === first);
  const own = name === undefined ? -1 : Number(second) - scenario[name].length;
  if (name === undefined || second === '' || own < 0) return { ...error, path: name === undefined ? '' : `/${name}` };
  const path = pointerOf([name, own, ...rest]);
  const id = childOf(listOf(addition, name)[own], 'id');
  if (error.code === 'DUPLICATE_ID' && name !== 'orders' && scenario[name].some((entry) => entry.id === id)) {
    const says = `The scenario has a ${SINGULAR[name]} ${shown(String(id))} already.`;
    return inputErrorAt(
      'DUPLICATE_ID',
      path,
      says,
      'Give the new one another id, or take it out and order the one that is there.',
    );
  }
  return { ...error, path, says: error.says.replace(/^Order \d+/, `Order ${own + 1}`) };
}

type Judged = { readonly addition: Addition | undefined; readonly errors: readonly CodedError[] };

function judged(value: unknown, scenario: Scenario): Judged {
  const result = additionSchema.safeParse(value);
  const ofSchema = result.success ? [] : schemaErrors(result.error.issues, additionSchema, value);
  const ofDay = crossErrors(partsOf(joined(scenario, value))).map((error) => inAddition(error, scenario, value));
  return { addition: result.data, errors: [...ofSchema, ...ofDay] };
}

function withAddition(scenario: Scenario, addition: Addition): Scenario {
  return scenarioSchema.parse(joined(scenario, addition));
}

/** Reads an addition in YAML or JSON and adds it to the scenario. Errors carry line and column in the text of the addition. */
export function readAddition(text: string, scenario: Scenario): Reading<Scenario> {
  const plain = plainText(text, 'The addition', 'docs/fit.md');
  if (!plain.ok) return plain;
  const { value, refused, list } = plain.value;
  const { addition, errors } = judged(value, scenario);
  if (addition === undefined || errors.length > 0 || refused.length > 0) return { ok: false, errors: list(errors) };
  return { ok: true, value: withAddition(scenario, addition) };
}

/** Adds orders given one by one; the paths of errors begin with the number of the order, counted from 0. */
export function addOrders(orders: readonly Order[], scenario: Scenario): Reading<Scenario> {
  const { addition, errors } = judged({ addition: 1, orders: [...orders] }, scenario);
  if (addition !== undefined && errors.length === 0) return { ok: true, value: withAddition(scenario, addition) };
  const placed: readonly InputError[] = errorList([], errors, (error) => error);
  return { ok: false, errors: placed.map((error) => ({ ...error, path: error.path.replace(/^\/orders/, '') })) };
}
