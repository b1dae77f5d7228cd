// A plan as it reads on a day that begins earlier or later: every minute moved. A start for the search. Used by whatWouldFit.
import type { Plan } from '../../model/plan.ts';

export function shiftedPlan(plan: Plan, minutes: number): Plan {
  if (minutes === 0) return plan;
  const moved = <T extends { readonly start: number; readonly end: number }>(span: T): T => ({
    ...span,
    start: span.start + minutes,
    end: span.end + minutes,
  });
  return {
    ...plan,
    tasks: plan.tasks.map((task) => ({ ...moved(task), handsOn: task.handsOn.map(moved) })),
    decks: plan.decks.map((deck) => ({ ...deck, setPoints: deck.setPoints.map(moved) })),
  };
}
