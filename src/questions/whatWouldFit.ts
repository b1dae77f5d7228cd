// What would make late and left-out trays fit: of each kind of change the smallest single one, found by planning the changed day.
// Used by fit, and by whoever shows a plan with trays in trouble.

import { listed } from '../explain/why/words.ts';
import { clockOf } from '../model/clock.ts';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { NotOffered, OfferedChange, WouldFit } from '../model/wouldFit.ts';
import { FIT_CHANGES, type FitChange } from '../model/wouldFit.ts';
import type { Asking } from './asking.ts';
import { acceptanceOf } from './whatWouldFit/accepted.ts';
import { AnotherPerson } from './whatWouldFit/anotherPerson.ts';
import { Climb } from './whatWouldFit/climb.ts';
import { deckPlace } from './whatWouldFit/deckPlace.ts';
import { dropPieces } from './whatWouldFit/dropPieces.ts';
import { AS_IT_IS, type Ground, type LadderOf } from './whatWouldFit/ladder.ts';
import { moreShelves } from './whatWouldFit/moreShelves.ts';
import { moveOrder } from './whatWouldFit/moveOrder.ts';
import { orderWords } from './whatWouldFit/orderWords.ts';
import { type Outcome, refuse, type Search } from './whatWouldFit/outcome.ts';
import { startEarlier } from './whatWouldFit/startEarlier.ts';
import { Pace, type Patching, Trial } from './whatWouldFit/trial.ts';
import { troubledOrders, type Wanted } from './whatWouldFit/trouble.ts';

/** Rounds for each question whether a change can do. */
export const QUESTION_ROUNDS = 600;

const LADDERS: Readonly<Record<Exclude<FitChange, 'another-person'>, LadderOf>> = {
  'start-earlier': startEarlier,
  'more-shelves': moreShelves,
  'deck-place': deckPlace,
  'move-order': moveOrder,
  'drop-pieces': dropPieces,
};

export type WhatWouldFitQuestion = {
  readonly scenario: Scenario;
  /** A plan of it. */
  readonly plan: Plan;
  readonly patch: Patching;
  /** What is to fit, each for itself. Default: the orders in trouble, product by product. */
  readonly wanted?: readonly Wanted[];
  /** Rounds for each question whether a change can do. Default 600. Days planned from scratch take the usual rounds. */
  readonly effort?: number;
};

/** The orders in trouble, product by product; the others may stay as they are. */
export function troubleByProduct(scenario: Scenario, plan: Plan): readonly Wanted[] {
  const troubled = troubledOrders(plan);
  const products = [...new Set(troubled.map((index) => scenario.orders[index]?.product))];
  return products.map((product) => {
    const orders = troubled.filter((index) => scenario.orders[index]?.product === product);
    return { orders, changeable: orders, mayFail: new Set(troubled.filter((index) => !orders.includes(index))) };
  });
}

type Answered = { asItIs: Plan | null; readonly changes: OfferedChange[]; readonly notOffered: NotOffered[] };

/** The searches for the changes for one set of orders, taken turn about. */
class Group {
  private readonly ground: Ground;
  private readonly trial: Trial;
  private readonly answered: Answered = { asItIs: null, changes: [], notOffered: [] };
  private waiting: { readonly kind: FitChange; readonly search: Search }[] = [];

  constructor(question: WhatWouldFitQuestion, wanted: Wanted, asking: Asking) {
    const { scenario, plan, patch, effort } = question;
    this.ground = { scenario, clock: clockOf(scenario), wanted };
    const acceptance = acceptanceOf(scenario, plan, wanted.mayFail);
    this.trial = new Trial(
      { scenario, wanted, acceptance, startFrom: plan, patch, rounds: effort ?? QUESTION_ROUNDS, pace: new Pace() },
      asking,
    );
  }

  /** Asks of the day as it is, then begins the searches. */
  async begin(): Promise<void> {
    let isBaseImpossible = false;
    if (this.trial.hasTime()) {
      const { is, plan } = await this.trial.decide(AS_IT_IS);
      isBaseImpossible = is === 'impossible';
      if (is === 'possible' && plan !== null && this.trial.hasTime()) this.answered.asItIs = await this.trial.wholePlan(plan);
    }
    for (const kind of FIT_CHANGES) {
      if (kind === 'another-person') {
        this.waiting.push({ kind, search: new AnotherPerson(this.ground, this.trial).search() });
        continue;
      }
      const ladder = LADDERS[kind](this.ground);
      if (typeof ladder === 'string') this.take(refuse(kind, 'of-no-use', ladder));
      else this.waiting.push({ kind, search: new Climb(ladder, this.trial, isBaseImpossible).search() });
    }
  }

  get isDone(): boolean {
    return this.waiting.length === 0;
  }

  /** One step of each search. */
  async turn(): Promise<void> {
    const still: { readonly kind: FitChange; readonly search: Search }[] = [];
    for (const one of this.waiting) {
      const { done, value } = await one.search.next();
      if (done === true) this.take(value);
      else still.push(one);
    }
    this.waiting = still;
  }

  private take(outcome: Outcome): void {
    if ('offered' in outcome) this.answered.changes.push(outcome.offered);
    else this.answered.notOffered.push(outcome.notOffered);
  }

  private says(orders: string): string {
    const { asItIs, changes, notOffered } = this.answered;
    if (asItIs !== null) return `A plan of the day as it is was found after all with ${orders} ready on time.`;
    if (changes.length === 0 && notOffered.every(({ because }) => because === 'no-time' || because === 'of-no-use'))
      return `There was no time to find out what would have ${orders} ready on time.`;
    if (changes.length === 0) return `No single change was found and planned from scratch with ${orders} ready on time.`;
    return `To have ${orders} ready on time, ${changes.length === 1 ? 'this' : 'any one of these'} is enough.`;
  }

  answer(): WouldFit {
    const { scenario, wanted } = this.ground;
    const orders = wanted.orders.flatMap((index) => {
      const order = scenario.orders[index];
      return order === undefined ? [] : [{ number: index + 1, ...order }];
    });
    const rank = ({ kind }: { readonly kind: FitChange }): number => FIT_CHANGES.indexOf(kind);
    return {
      orders,
      asItIs: this.answered.asItIs,
      changes: [...this.answered.changes].sort((a, b) => rank(a) - rank(b)),
      notOffered: [...this.answered.notOffered].sort((a, b) => rank(a) - rank(b)),
      says: this.says(listed(orders.map((order) => `${orderWords(scenario, order)} for ${order.readyBy}`))),
    };
  }
}

/** For every set of orders in trouble, what would make its trays fit; empty when none is. The kinds of change take turns. */
export async function whatWouldFit(question: WhatWouldFitQuestion, asking: Asking): Promise<readonly WouldFit[]> {
  const wanted = question.wanted ?? troubleByProduct(question.scenario, question.plan);
  const groups = wanted.filter(({ orders }) => orders.length > 0).map((one) => new Group(question, one, asking));
  for (const group of groups) await group.begin();
  while (groups.some((group) => !group.isDone)) for (const group of groups) await group.turn();
  return groups.map((group) => group.answer());
}
