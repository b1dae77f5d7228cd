// What POST /v1/fits asks: a day and what is to be added to it in; whether it fits, what it costs and what would make it fit out.
import type { Scenario } from '../../model/scenario.ts';
import { addOrders, readAddition } from '../../read/readAddition.ts';
import { shapeOf, within } from '../bodyValue.ts';
import type { Ask, WorkLimits } from '../jobs/work.ts';
import { mustRead } from '../mustRead.ts';
import { fitBodySchema } from '../routes/bodies.ts';
import { scenarioWithin, soundPlan } from './soundPlan.ts';

/** The day with the addition, then with the orders given one by one. */
function dayWith(
  { add = [], addition }: { readonly add?: Scenario['orders']; readonly addition?: unknown },
  before: Scenario,
): Scenario {
  const withAddition =
    addition === undefined ? before : mustRead(within('addition', readAddition(JSON.stringify(addition), before)));
  const after = add.length === 0 ? withAddition : mustRead(within('add', addOrders(add, withAddition)));
  if (after.orders.length > before.orders.length) return after;
  const says = 'No order wants any of it.';
  const doThis = 'Write orders in `addition`, or `add` some of a product the day has.';
  return mustRead({ ok: false, errors: [{ code: 'MISSING', path: '/add', says, doThis }] });
}

/** What a body asks. */
export function fitAsk(body: unknown, limits: WorkLimits): Ask {
  const { scenario, plan, add, addition } = shapeOf(fitBodySchema, body);
  const wanted = { ...(add === undefined ? {} : { add }), ...(addition === undefined ? {} : { addition }) };
  if (plan === undefined) {
    const before = mustRead(scenarioWithin(scenario));
    return { kind: 'fit', before, after: dayWith(wanted, before), limits };
  }
  const [before, base] = soundPlan(scenario, plan);
  return { kind: 'fit', before, after: dayWith(wanted, before), base, limits };
}
