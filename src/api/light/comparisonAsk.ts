// What POST /v1/comparisons asks: a day and changes to it, or a range of values for one number, in; what each would bring out.
import type { InputError, Reading } from '../../model/inputError.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { CompareQuestion } from '../../questions/compare.ts';
import { readChanges } from '../../read/readChanges.ts';
import { type Sweep, sweepScenario } from '../../read/sweepScenario.ts';
import { both, shapeOf } from '../bodyValue.ts';
import type { Ask, WorkLimits } from '../jobs/work.ts';
import { mustRead } from '../mustRead.ts';
import { changesBodySchema, MOST_SWEPT, sweepBodySchema } from '../routes/bodies.ts';
import { scenarioWithin } from './soundPlan.ts';

type Days = Pick<CompareQuestion, 'days' | 'sweep'>;

function changedDays(changes: unknown, base: Scenario): Reading<Days> {
  // As a file of changes, whose places begin with /changes as those of the body do.
  const reading = readChanges(JSON.stringify({ changes }), base);
  if (!reading.ok) return { ok: false, errors: reading.errors.map(({ line: _line, column: _column, ...error }) => error) };
  return { ok: true, value: { days: reading.value.map((change) => ({ ...change, value: null })), sweep: null } };
}

function wrongSweep(code: string, path: string, says: string, doThis: string): Reading<Days> {
  return { ok: false, errors: [{ code, path: `/sweep${path}`, says, doThis }] };
}

/** Errors of the swept scenarios are told at the pointer: no value of the body is at fault alone. */
function sweptDays(sweep: Sweep, base: Scenario): Reading<Days> {
  const { pointer, from, to, step } = sweep;
  if (to < from) return wrongSweep('RANGE_UPSIDE_DOWN', '/to', 'The last value is below the first.', 'Swap them.');
  const values = Math.floor((to - from) / step) + 1;
  if (values > MOST_SWEPT)
    return wrongSweep(
      'WRONG_COUNT',
      '',
      `These are ${values} values, and at most ${MOST_SWEPT} are compared.`,
      'Take larger steps.',
    );
  const reading = sweepScenario(base, sweep);
  if (!reading.ok)
    return { ok: false, errors: reading.errors.map((error): InputError => ({ ...error, path: '/sweep/pointer' })) };
  const { place, now, swept } = reading.value;
  const days = swept.map(({ value, scenario }) => ({ title: String(value), value, scenario }));
  return { ok: true, value: { days, sweep: { pointer, place, now } } };
}

/** The product whose trays are to be added must be one that is ordered. */
function orderedProduct(moreOf: string | undefined, { orders }: Scenario): Reading<string | undefined> {
  if (moreOf === undefined || orders.some(({ product }) => product === moreOf)) return { ok: true, value: moreOf };
  const ordered = [...new Set(orders.map(({ product }) => product))].join(', ');
  const says = `No order wants "${moreOf}", so it is not known by when more of it would be wanted.`;
  return { ok: false, errors: [{ code: 'UNKNOWN_PRODUCT', path: '/moreOf', says, doThis: `Name one of: ${ordered}.` }] };
}

function isSweep(body: unknown): boolean {
  return typeof body === 'object' && body !== null && 'sweep' in body && !('changes' in body);
}

type Wanted = { readonly base: Scenario; readonly days: Days; readonly moreOf: string | undefined };

function wanted(body: unknown): Wanted {
  const read = isSweep(body) ? shapeOf(sweepBodySchema, body) : shapeOf(changesBodySchema, body);
  const base = mustRead(scenarioWithin(read.scenario));
  const asked = 'sweep' in read ? sweptDays(read.sweep, base) : changedDays(read.changes, base);
  const [days, moreOf] = mustRead(both(asked, orderedProduct(read.moreOf, base)));
  return { base, days, moreOf };
}

/** What a body asks. */
export function comparisonAsk(body: unknown, limits: WorkLimits): Ask {
  const { base, days, moreOf } = wanted(body);
  return { kind: 'comparison', question: { base, ...days, ...(moreOf === undefined ? {} : { of: moreOf }) }, limits };
}
