// Why trays are left out, in the baker's words: what, were there more of it, would let the tray in beside the plan as it stands.
import type { LeftOut, Reason } from '../model/plan.ts';
import type { RuleCode } from '../model/rules.ts';
import { fitWhenRelaxed, type Relaxation } from '../solver/blockers.ts';
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

type LeftOutTray = { readonly unit: number; readonly needs: ReadonlySet<number> };

function questionsFor(compiled: Compiled): Question[] {
  const kinds = new Set(compiled.shop.roles.map((role) => role.kind));
  const questions: Question[] = [];
  for (const kind of kinds) {
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

/** Whether a tray needs the thing a question is about: a tray that is never proofed does not lack a shelf. */
function concerns(question: Question, tray: LeftOutTray): boolean {
  const { relaxation } = question;
  return relaxation.kind !== 'pools' || relaxation.pools.some((pool) => tray.needs.has(pool));
}

const SEVERAL: Reason = {
  rule: 'TRAY_COUNT',
  says: 'With the rest of the plan as it stands, more than one thing is in its way: no single one, were there plenty of it, lets it in.',
};

const NO_TIME: Reason = {
  rule: 'TRAY_COUNT',
  says: 'The time limit left no time to try out what is in its way. Plan again with more seconds to learn it.',
};

/** Left-out trays by product, with reasons tried out on the plan, as many as there is time for. */
export function leftOutOf(compiled: Compiled, solution: Solution, names: Names, mayAsk: () => boolean): LeftOut[] {
  const products = compiled.products.flatMap(({ product }) => {
    const mine = compiled.trays.filter((tray, t) => tray.product.id === product.id && names.trays[t]?.readyMinute === null);
    const first = mine[0];
    if (first === undefined) return [];
    const batchTasks = compiled.problem.units[compiled.batchUnits[first.batch] as number]?.tasks ?? [];
    const tasks = [...batchTasks, ...first.tasks];
    const needs = new Set(tasks.flatMap((task) => compiled.problem.tasks[task]?.demands.flatMap((demand) => demand.pools) ?? []));
    return [{ id: product.id, trays: mine.length, tray: { unit: first.unit, needs } }];
  });
  if (products.length === 0) return [];
  const units = products.map(({ tray }) => tray.unit);
  const reasons: Reason[][] = products.map(() => []);
  let isCutShort = false;
  for (const question of questionsFor(compiled)) {
    isCutShort ||= !mayAsk();
    if (isCutShort) break;
    const { rule, lacks, wouldFitIf, relaxation } = question;
    fitWhenRelaxed(compiled.problem, solution.records, units, relaxation).forEach((fits, i) => {
      const product = products[i];
      if (!fits || product === undefined || !concerns(question, product.tray)) return;
      const says = `With the rest of the plan as it stands, ${lacks}.`;
      reasons[i]?.push({ rule, says, wouldFitIf: `${wouldFitIf}.` });
    });
  }
  return products.map(({ id, trays }, i) => ({
    product: id,
    trays,
    reasons: reasons[i]?.length ? (reasons[i] as Reason[]) : [isCutShort ? NO_TIME : SEVERAL],
  }));
}
