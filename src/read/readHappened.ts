// The door for what has happened on a day under way: text in; events that fit the scenario and its plan, or every error at once, out.
import { changedOrders } from '../dough/changedOrders.ts';
import { type Happened, happenedSchema } from '../model/happened.ts';
import { HAPPENED_CODES } from '../model/happenedCodes.ts';
import type { InputError, Reading } from '../model/inputError.ts';
import { ERROR_CODES } from './errorCodes.ts';
import { eventErrors } from './happened/eventErrors.ts';
import { type KnownDay, knownDayOf } from './happened/knownDay.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { plainText } from './plainText.ts';
import { schemaErrors } from './schemaErrors.ts';
import { shown } from './shown.ts';

const FILE = 'The file of what has happened';
const EXAMPLE = 'docs/replan.md';

/** Changes of orders that are not there, and a day without any. */
function orderErrors({ happened }: Happened, day: KnownDay): readonly CodedError[] {
  const { orders, unfound } = changedOrders(day.scenario.orders, happened, day.clock);
  const wrong = unfound.flatMap((index) => {
    const event = happened[index];
    if (event?.what !== 'order-changed' && event?.what !== 'order-cancelled') return [];
    // An unknown product has an error of its own.
    if (!day.products.has(event.product)) return [];
    const times = day.scenario.orders.filter(({ product }) => product === event.product).map(({ readyBy }) => `"${readyBy}"`);
    const says = `No order of ${shown(event.product)} is wanted by ${event.readyBy}.`;
    const doThis =
      times.length === 0 ? 'It is not ordered at all: use what: ordered.' : `Its orders are wanted by ${times.join(', ')}.`;
    return [inputErrorAt('NO_SUCH_ORDER', `/happened/${index}/readyBy`, says, doThis)];
  });
  if (wrong.length > 0 || orders.length > 0) return wrong;
  return [inputErrorAt('NO_ORDER_LEFT', '/happened', 'Every order is cancelled.', 'Then there is nothing left to plan.')];
}

/** What is wrong with events and decisions that have the right shape. */
function dayErrors(happened: Happened, day: KnownDay): readonly CodedError[] {
  return [...eventErrors(happened, day), ...orderErrors(happened, day)];
}

/** Reads what has happened by a minute of a scenario's day that went by a plan, in YAML or JSON. */
export function readHappened(text: string, ...of: Parameters<typeof knownDayOf>): Reading<Happened> {
  const plain = plainText(text, FILE, EXAMPLE);
  if (!plain.ok) return plain;
  const { value, refused, list } = plain.value;
  if (Array.isArray(value)) {
    const says = 'The whole input is a list, not keys with values.';
    return { ok: false, errors: list([inputErrorAt('NOT_AN_OBJECT', '', says, 'Put the line "happened:" before the list.')]) };
  }
  const result = happenedSchema.safeParse(value);
  if (!result.success) return { ok: false, errors: list(schemaErrors(result.error.issues, happenedSchema, value)) };
  const errors = dayErrors(result.data, knownDayOf(...of));
  if (errors.length > 0 || refused.length > 0) return { ok: false, errors: list(errors) };
  return { ok: true, value: result.data };
}

function isCoded(error: InputError): error is CodedError {
  return error.code in ERROR_CODES || error.code in HAPPENED_CODES;
}

/** Errors found when the day was gone through, with their line and column in the text that was read. */
export function placedInHappened(text: string, errors: readonly InputError[]): readonly InputError[] {
  const plain = plainText(text, FILE, EXAMPLE);
  return plain.ok ? plain.value.list(errors.filter(isCoded)) : errors;
}
