// Orders that come out otherwise than planned before: late now, less or more late, not whole, on time again. Used by moved.ts.
import { sayMinutes } from '../../check/sayMinute.ts';
import type { Plan, PlanOrder } from '../../model/plan.ts';
import type { ChangeLine } from '../../model/replanAnswer.ts';
import type { TrayNames } from './trayNames.ts';

type Words = {
  readonly names: TrayNames;
  readonly says: (minute: number) => string;
  readonly minuteOf: (instant: string) => number;
};

function outcome({ lateMinutes }: PlanOrder): string {
  if (lateMinutes === null) return 'not all of it';
  return lateMinutes === 0 ? 'on time' : `${sayMinutes(lateMinutes)} late`;
}

export function orderLines(before: Plan, after: Plan, words: Words): readonly ChangeLine[] {
  const waiting = [...before.orders];
  return after.orders.flatMap((order): ChangeLine[] => {
    const at = waiting.findIndex(({ product, readyBy }) => product === order.product && readyBy === order.readyBy);
    const [was] = at < 0 ? [] : waiting.splice(at, 1);
    const [old, now] = [was === undefined ? 'on time' : outcome(was), outcome(order)];
    if (old === now) return [];
    const minute = words.minuteOf(order.readyBy);
    const again = now === 'on time' ? ' now' : '';
    const says = `${order.pieces} ${words.names.product(order.product)} for ${words.says(minute)}: ${now}${again}.`;
    return [{ kind: 'order', minute, says, trays: [], batches: [], steps: [] }];
  });
}
