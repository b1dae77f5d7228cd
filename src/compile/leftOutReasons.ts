// Why trays are left out, in the baker's words: what, were there more of it, would let the tray in beside the plan as it stands.
import type { LeftOut, Reason } from '../model/plan.ts';
import type { RuleCode } from '../model/rules.ts';
import { blockersOf, type Relaxation } from '../solver/blockers.ts';
import type { Solution } from '../solver/solve.ts';
import type { PoolRole } from './shopPools.ts';
import type { Compiled } from './shopProblem.ts';
import type { Names } from './traySlots.ts';

/** How much longer the day is made when asking whether its end is in the way, in minutes. */
const LONGER_DAY_MINUTES = 240;

type Question = { readonly relaxation: Relaxation; readonly rule: RuleCode; readonly lacks: string; readonly wouldFitIf: string };

const POOL_WORDS: Record<PoolRole['kind'], { readonly rule: RuleCode; readonly lacks: string; readonly wouldFitIf: string }> = {
  people: {
    rule: 'PERSON_BUSY',
    lacks: 'nobody has hands free when it needs them',
    wouldFitIf: 'another pair of hands were there',
  },
  bench: { rule: 'BENCH_CAPACITY', lacks: 'the bench is taken when it needs a place', wouldFitIf: 'the bench had another place' },
  shelf: { rule: 'SHELF_CAPACITY', lacks: 'no proofer shelf is free long enough', wouldFitIf: 'there were more proofer shelves' },
  retarder: {
    rule: 'RETARDER_CAPACITY',
    lacks: 'no retarder place is free long enough',
    wouldFitIf: 'there were more retarder places',
  },
  bowl: { rule: 'BOWL_CAPACITY', lacks: 'no bowl is free to mix it', wouldFitIf: 'there were another bowl' },
  rack: {
    rule: 'RACK_CAPACITY',
    lacks: 'the cooling rack is full when it comes out',
    wouldFitIf: 'the cooling rack held more trays',
  },
};

function questionsFor(compiled: Compiled, tasks: readonly number[]): Question[] {
  const needed = new Set(tasks.flatMap((task) => compiled.problem.tasks[task]?.demands.flatMap((demand) => demand.pools) ?? []));
  const kinds = new Set([...needed].map((p) => compiled.shop.roles[p]?.kind));
  const questions: Question[] = [];
  for (const kind of kinds) {
    if (kind === undefined) continue;
    const pools = compiled.shop.roles.flatMap((role, p) => (role.kind === kind ? [p] : []));
    questions.push({ relaxation: { kind: 'pools', pools }, ...POOL_WORDS[kind] });
  }
  questions.push(
    {
      relaxation: { kind: 'chamber-room' },
      rule: 'DECK_CAPACITY',
      lacks: 'the decks are full when it is ready to bake',
      wouldFitIf: 'a deck held more trays',
    },
    {
      relaxation: { kind: 'chamber-rates' },
      rule: 'HEAT_RATE',
      lacks: 'no deck can reach its temperature in time',
      wouldFitIf: 'the decks changed temperature faster',
    },
    {
      relaxation: { kind: 'longer-day', by: LONGER_DAY_MINUTES },
      rule: 'DAY_WINDOW',
      lacks: 'the day ends before it would be done',
      wouldFitIf: 'the day were longer',
    },
  );
  return questions;
}

function reasonsOf(compiled: Compiled, solution: Solution, unit: number, tasks: readonly number[]): Reason[] {
  const questions = questionsFor(compiled, tasks);
  const answers = blockersOf(
    compiled.problem,
    solution.records,
    unit,
    questions.map((question) => question.relaxation),
  );
  const reasons = questions.flatMap(({ rule, lacks, wouldFitIf }, q) =>
    answers[q] === true
      ? [{ rule, says: `With the rest of the plan as it stands, ${lacks}.`, wouldFitIf: `It would fit if ${wouldFitIf}.` }]
      : [],
  );
  if (reasons.length > 0) return reasons;
  return [
    {
      rule: 'STEP_COMPLETE',
      says: 'With the rest of the plan as it stands, more than one thing is in its way: no single one, were there plenty of it, lets it in.',
    },
  ];
}

/** Left-out trays by product, with reasons tried out on the plan. */
export function leftOutOf(compiled: Compiled, solution: Solution, names: Names): LeftOut[] {
  return compiled.products.flatMap(({ product }) => {
    const mine = compiled.trays.flatMap((tray, t) =>
      tray.product.id === product.id && names.trays[t]?.readyMinute === null ? [tray] : [],
    );
    const first = mine[0];
    if (first === undefined) return [];
    const batchTasks = compiled.problem.units[compiled.batchUnits[first.batch] as number]?.tasks ?? [];
    const reasons = reasonsOf(compiled, solution, first.unit, [...batchTasks, ...first.tasks]);
    return [{ product: product.id, trays: mine.length, reasons }];
  });
}
