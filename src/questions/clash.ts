// A small set of orders and limits of a day that cannot all be met, each member tried by planning without it. Used by why.
import type { Scenario } from '../model/scenario.ts';
import type { Clash, ClashMember } from '../model/why.ts';
import type { Asking } from './asking.ts';
import { type Candidate, candidatesOf } from './clash/dayOf.ts';
import { limitsOf } from './clash/limitsOf.ts';
import { type SmallSet, smallSet } from './clash/smallSet.ts';
import { type ClashLimits, Verdicts } from './clash/verdicts.ts';
import { sayClash, sayNotProved, sayOrder, sayProof } from './clash/words.ts';

export type { ClashLimits } from './clash/verdicts.ts';

/** Kinds of limits that most often bind a day, first. The search keeps what comes first and is rid of the rest soon. */
const LIKELY = [
  'deck-room',
  'day-start',
  'shelves',
  'hands',
  'heat-rates',
  'hours',
  'bench-places',
  'retarder-room',
  'product-standing',
  'dough-standing',
  'bowl',
  'rack-room',
  'cannot',
  'steam',
  'day-end',
];

/** Orders that are late or left out in the plan to begin from first, then the other orders, then limits, likely ones first. */
function likelyFirst(all: readonly Candidate[], { startFrom }: ClashLimits): readonly Candidate[] {
  const rank = (one: Candidate): number => {
    if (one.is === 'limit') return 2 + LIKELY.indexOf(one.limit.kind);
    const planned = startFrom?.orders[one.number - 1];
    return planned !== undefined && planned.lateMinutes === 0 ? 1 : 0;
  };
  return [...all].sort((a, b) => rank(a) - rank(b));
}

function memberOf(scenario: Scenario, one: Candidate, withoutIt: 'possible' | 'unknown'): ClashMember {
  if (one.is === 'order') {
    const { product, pieces, readyBy } = one.order;
    return { is: 'order', number: one.number, product, pieces, readyBy, says: sayOrder(scenario, one.order), withoutIt };
  }
  const { kind, rule, of, says, lifted } = one.limit;
  return { is: 'limit', limit: kind, rule, of, says, lifted, withoutIt };
}

function found(scenario: Scenario, all: readonly Candidate[], set: SmallSet, solves: number): Clash {
  const inOrder = all.filter((one) => set.members.includes(one));
  const members = inOrder.map((one) => memberOf(scenario, one, set.withoutIt.get(one) ?? 'unknown'));
  const notProved = sayNotProved(members);
  const proof = { argument: set.bound.argument, says: sayProof(set.bound) };
  const isMinimal = notProved.length === 0;
  return { is: 'found', members, isMinimal, notProved, proof, solves, says: sayClash(members, isMinimal) };
}

/** Why not all of a whole day can be ready on time. Every day it plans is within the time of `asking` and the rounds of `limits`. */
export async function clashOf(scenario: Scenario, asking: Asking, limits: ClashLimits = {}): Promise<Clash> {
  if (scenario.underway !== undefined) {
    const says = 'What clashes is not asked of a day under way: what has begun cannot be taken away.';
    return { is: 'unknown', solves: 0, says };
  }
  const all = candidatesOf(scenario, limitsOf(scenario));
  const verdicts = new Verdicts(scenario, all, asking, limits);
  const whole = await verdicts.of(new Set(all));
  if (whole.is === 'possible') {
    const says = 'Nothing clashes: a plan with every tray ready on time was found. Plan again with more time to get such a plan.';
    return { is: 'none', solves: verdicts.solves, says };
  }
  if (whole.is === 'unknown') {
    const says =
      'Whether everything can be ready on time is not known: no such plan was found, and no proof that there is none. More seconds may tell.';
    return { is: 'unknown', solves: verdicts.solves, says };
  }
  const set = await smallSet(verdicts, likelyFirst(all, limits), whole.bound);
  return found(scenario, all, set, verdicts.solves);
}
