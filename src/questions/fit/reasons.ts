// Why an addition does not fit: what is proved, what is late or left out, what the rest of the plan leaves no room for. Used by fit.
import { sayMinutes } from '../../check/sayMinute.ts';
import { capital } from '../../explain/why/words.ts';
import type { FitReason } from '../../model/fitAnswer.ts';
import type { Plan } from '../../model/plan.ts';
import { fullByWork, isFullWords } from '../capacity/fullWords.ts';
import { overfull } from '../capacity/workLimit.ts';
import { orderWords, productWords } from '../whatWouldFit/orderWords.ts';
import { troubledOrders, type Wanted } from '../whatWouldFit/trouble.ts';
import type { AddedTo } from './addedTo.ts';

/** An argument that no plan has all of it on time. */
function proofReasons({ after }: AddedTo, bound: Plan['bound']): readonly FitReason[] {
  const full = after.underway === undefined ? overfull(after) : null;
  if (full === null) return [{ rule: null, says: `No plan has everything ready on time: ${bound.says}` }];
  const { kind, neededMinutes, openMinutes } = full;
  const says = `No plan has everything ready on time: ${isFullWords(fullByWork(kind))}, ${neededMinutes} minutes of it needed and ${openMinutes} there in time.`;
  return [{ rule: null, says }];
}

function orderReason({ after }: AddedTo, plan: Plan, index: number, isAdded: boolean): readonly FitReason[] {
  const order = after.orders[index];
  const planned = plan.orders[index];
  if (order === undefined || planned === undefined) return [];
  const name = `${orderWords(after, order)} for ${order.readyBy}`;
  const where = isAdded ? 'In the best plan found' : 'With it, in the best plan found,';
  if (planned.readyAt === null) return [{ rule: 'TRAY_COUNT', says: `${where} ${name} is left out, in whole or in part.` }];
  return [{ rule: null, says: `${where} ${name} is ${sayMinutes(planned.lateMinutes ?? 0)} late.` }];
}

/** `bound`: the argument, when it is proved that nothing fits; null otherwise. */
export function reasonsFor(day: AddedTo, plan: Plan, wanted: Wanted, bound: Plan['bound'] | null): readonly FitReason[] {
  const added = new Set(wanted.orders);
  const troubled = troubledOrders(plan).filter((index) => added.has(index) || !wanted.mayFail.has(index));
  const products = new Set(troubled.map((index) => day.after.orders[index]?.product));
  const leftOut = plan.leftOut.filter(({ product }) => products.has(product));
  return [
    ...(bound === null ? [] : proofReasons(day, bound)),
    ...troubled.flatMap((index) => orderReason(day, plan, index, added.has(index))),
    ...leftOut.flatMap(({ product, reasons }) =>
      reasons.map(({ rule, says }) => ({ rule, says: `${capital(productWords(day.after, product))}: ${says}` })),
    ),
  ];
}
