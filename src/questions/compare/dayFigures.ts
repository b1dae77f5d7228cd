// What a plan of a day comes to: orders, people's hours, oven hours, how full everything is. Read off a plan; used by compare.
import { busiestOf } from '../../explain/busiest.ts';
import { type Clock, clockOf, minuteAt } from '../../model/clock.ts';
import type { Capacity, DayFigures, OvenHours, PersonHours } from '../../model/comparison.ts';
import type { Plan } from '../../model/plan.ts';
import type { Person, Scenario } from '../../model/scenario.ts';

/** Minutes of presence a person is paid for: hours less breaks. */
function paidMinutes(clock: Clock, person: Person): number {
  const from = minuteAt(clock, person.from);
  const there = new Uint8Array(Math.max(0, minuteAt(clock, person.until) - from)).fill(1);
  for (const pause of person.breaks)
    there.fill(0, Math.max(0, minuteAt(clock, pause.from) - from), Math.max(0, minuteAt(clock, pause.until) - from));
  return there.reduce((sum, isThere) => sum + isThere, 0);
}

function personHours(clock: Clock, person: Person, plan: Plan): PersonHours {
  const work = plan.tasks.flatMap(({ handsOn }) =>
    handsOn.filter((hands) => hands.person === person.id && hands.end > hands.start),
  );
  return {
    person: person.id,
    name: person.name ?? person.id,
    paidMinutes: paidMinutes(clock, person),
    handsOnMinutes: work.reduce((sum, { start, end }) => sum + end - start, 0),
    firstMinute: work.length === 0 ? null : Math.min(...work.map(({ start }) => start)),
    lastMinute: work.length === 0 ? null : Math.max(...work.map(({ end }) => end)),
  };
}

/** A deck is on from when it first heats up, or bakes, until its last bake ends. */
function ovenHours(plan: Plan): readonly OvenHours[] {
  return plan.bakehouse.decks.map(({ id, name }) => {
    const bakes = plan.tasks.filter(({ step, place }) => step === 'bake' && place?.kind === 'deck' && place.id === id);
    if (bakes.length === 0) return { deck: id, name, onMinutes: 0, heatUpMinutes: 0, bakingMinutes: 0 };
    const moves = plan.decks.find((deck) => deck.id === id)?.setPoints.filter(({ fromC, toC }) => fromC !== toC) ?? [];
    const firstBake = Math.min(...bakes.map(({ start }) => start));
    const lastBake = Math.max(...bakes.map(({ end }) => end));
    const on = Math.min(firstBake, ...moves.map(({ start }) => start));
    const isBaking = new Uint8Array(lastBake);
    for (const { start, end } of bakes) isBaking.fill(1, start, end);
    return {
      deck: id,
      name,
      onMinutes: lastBake - on,
      heatUpMinutes: firstBake - on,
      bakingMinutes: isBaking.reduce((sum, bakes) => sum + bakes, 0),
    };
  });
}

/** The figures of a plan that has passed the judge. */
export function dayFiguresOf(scenario: Scenario, plan: Plan, capacity: Capacity | null): DayFigures {
  const clock = clockOf(scenario);
  const use = busiestOf(scenario, plan);
  const top = use.resources.find(({ kind, id }) => kind === use.busiest?.kind && id === use.busiest.id);
  const people = (scenario.people ?? []).map((person) => personHours(clock, person, plan));
  const ovens = ovenHours(plan);
  return {
    fingerprint: plan.scenario.fingerprint,
    holds: plan.holds,
    score: plan.score,
    trays: plan.batches.reduce((sum, { trays }) => sum + trays.length, 0),
    orders: plan.orders,
    lateOrders: plan.orders.filter(({ lateMinutes }) => (lateMinutes ?? 0) > 0).length,
    busiest: top === undefined ? null : { kind: top.kind, id: top.id, name: top.name, share: top.share },
    busiestSays: use.says,
    resources: use.resources,
    people,
    ovens: [...ovens],
    paidMinutes: people.reduce((sum, person) => sum + person.paidMinutes, 0),
    handsOnMinutes: people.reduce((sum, person) => sum + person.handsOnMinutes, 0),
    ovenMinutes: ovens.reduce((sum, oven) => sum + oven.onMinutes, 0),
    capacity,
    notes: plan.solver.notes,
  };
}
