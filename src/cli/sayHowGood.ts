// How good a plan is: its price, the floor under any plan's price, and the argument for it. Part of the terminal summary.
import type { Plan, Score } from '../model/plan.ts';

function sayPrice(price: number): string {
  return String(Math.round(price * 100) / 100);
}

/** The gap in percent of the price, rounded up; undefined when the floor is 0 and says nothing. */
export function percentGap(score: Pick<Score, 'cost' | 'lowerBound'>): string | undefined {
  if (score.lowerBound <= 0) return undefined;
  return (Math.ceil(((score.cost - score.lowerBound) / score.cost) * 1000 - 1e-9) / 10).toFixed(1);
}

/** The argument behind the floor, as a sentence. */
function sayArgument({ bound }: Plan): string {
  return `${bound.says.slice(0, 1).toUpperCase()}${bound.says.slice(1)}`;
}

function sayStopped(plan: Plan): string {
  const seconds = plan.solver.seconds.toFixed(1);
  if (plan.stopped === 'time') return `The search ended at its time limit, after ${seconds} s.`;
  if (plan.stopped === 'effort') return `The search ended after ${plan.solver.effort} rounds, ${seconds} s.`;
  if (plan.stopped === 'enough') return `The search ended once the plan was good enough for what was asked, after ${seconds} s.`;
  return plan.stopped === 'cancelled' ? `The search was stopped after ${seconds} s; this is the best plan it had.` : '';
}

export function sayHowGood(plan: Plan): readonly string[] {
  const { score } = plan;
  if (plan.stopped === 'proved') return [`Price ${sayPrice(score.cost)}, proved: no plan costs less. ${sayArgument(plan)}`];
  const gap = percentGap(score);
  const distance = gap === undefined ? 'how far from the best possible is not known' : `at most ${gap} % from the best possible`;
  return [
    `Price ${sayPrice(score.cost)}, ${distance}.`,
    `No plan costs less than ${sayPrice(score.lowerBound)}. ${sayArgument(plan)}`,
    sayStopped(plan),
  ];
}
