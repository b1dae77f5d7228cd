// A clash in sentences. Used by clash.
import type { Plan } from '../../model/plan.ts';
import type { Order, Scenario } from '../../model/scenario.ts';
import type { ClashMember } from '../../model/why.ts';

export function sayOrder({ products }: Scenario, { product, pieces, readyBy }: Order): string {
  return `${pieces} ${products.find(({ id }) => id === product)?.name ?? product} ready by ${readyBy}`;
}

export function sayNotProved(members: readonly ClashMember[]): string[] {
  return members.flatMap(({ says, withoutIt }) =>
    withoutIt === 'possible' ? [] : [`It is not proved that the rest could be done without this: ${says}.`],
  );
}

const count = (number: number, one: string): string => `${number} ${one}${number === 1 ? '' : 's'}`;

export function sayClash(members: readonly ClashMember[], isMinimal: boolean): string {
  const orders = members.filter(({ is }) => is === 'order').length;
  const limits = members.length - orders;
  const parts = [...(orders > 0 ? [count(orders, 'order')] : []), ...(limits > 0 ? [count(limits, 'limit')] : [])];
  const together = members.length === 1 ? '' : members.length === 2 ? 'both ' : 'all ';
  const what = `${parts.join(' and ')} cannot ${together}be met, whatever the plan, even with every other order taken away and every other limit lifted`;
  return isMinimal
    ? `${what}. Without any one of them the rest can be: a plan of it was made and judged.`
    : `${what}. Not every one of them is proved to be needed.`;
}

/** Why the set cannot be met: what a proof by search followed is named by what was asked. */
export function sayProof({ argument, says }: Plan['bound']): string {
  return argument.startsWith('search')
    ? 'Every way to have all of these orders ready on time under these limits was followed until it broke one of them.'
    : `${says.slice(0, 1).toUpperCase()}${says.slice(1)}`;
}
