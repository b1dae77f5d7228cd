// A schedule read back as a plan: tasks, set points, orders, what is left out and what it is worth.

import { batchKg } from '../dough/batchKg.ts';
import { trayDoughKg } from '../dough/trayDoughKg.ts';
import { instantAt } from '../model/clock.ts';
import { fingerprint } from '../model/fingerprint.ts';
import type { Holds, Plan, PlanBatch, Score, Task } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { Solution } from '../solver/solve.ts';
import { bakehouseOf } from './bakehouse.ts';
import { boundWords } from './boundWords.ts';
import { leftOutOf } from './leftOutReasons.ts';
import { pathOfDay, temperatureChanges } from './pathOfDay.ts';
import { lateTrayMinutes, planOrders } from './planOrders.ts';
import { planTasks } from './planTasks.ts';
import { firstHandsOn, floorOf, movedTasks, scheduleOfDay } from './scheduleOfDay.ts';
import type { Compiled } from './shopProblem.ts';
import { type Names, namesOf } from './traySlots.ts';

export type PlanOrigin = { readonly seed: number; readonly seconds: number; readonly version: string };

/** Whether there is time to try out one more reason for what is left out. */
export type MayAsk = () => boolean;

const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;

function batchesOfPlan(compiled: Compiled, names: Names): PlanBatch[] {
  const rows = compiled.batches.flatMap((batch, b) => {
    const trays = compiled.trays.flatMap((tray, t) => {
      const slot = names.trays[t];
      return tray.batch === b && slot !== undefined && slot.readyMinute !== null ? [{ id: slot.id, product: tray.product }] : [];
    });
    if (trays.length === 0) return [];
    const kg = batchKg(
      trays.map((tray) => trayDoughKg(tray.product)),
      batch.dough.lossPercent,
    );
    const listed = trays.map((tray) => ({ id: tray.id, product: tray.product.id })).sort((x, y) => (x.id < y.id ? -1 : 1));
    return [{ id: names.batchIds[b] as string, dough: batch.dough.id, kg, trays: listed }];
  });
  return rows.sort((x, y) => (x.id < y.id ? -1 : 1));
}

function scoreOf(
  scenario: Scenario,
  compiled: Compiled,
  solution: Solution,
  names: Names,
  tasks: readonly Task[],
  decks: Plan['decks'],
): Score {
  const { goals, underway } = scenario;
  const late = lateTrayMinutes(compiled, names);
  const leftOut = names.trays.filter((tray) => tray.readyMinute === null).length;
  const finish = Math.max(0, ...names.trays.map((tray) => tray.readyMinute ?? 0));
  const first = firstHandsOn(compiled, solution.schedule, names);
  const span = goals.aim === 'start-late' ? finish - first : finish;
  const changes = underway === undefined ? solution.changes : temperatureChanges(tasks, decks);
  const moved = underway === undefined ? 0 : movedTasks(scenario, underway, tasks);
  const price =
    goals.lateTrayMinute * late +
    goals.leftOutTray * leftOut +
    goals.finishMinute * span +
    goals.temperatureChange * changes +
    (underway?.movePrice ?? 0) * moved;
  const cost = rounded(price);
  const lowerBound = rounded(floorOf(scenario, compiled, solution.bound.value));
  return {
    cost,
    lowerBound,
    gap: cost === 0 ? 0 : rounded((cost - lowerBound) / cost),
    lateTrayMinutes: late,
    leftOutTrays: leftOut,
    finishMinute: finish,
    temperatureChanges: changes,
    firstHandsOnMinute: first,
    ...(underway === undefined ? {} : { movedTasks: moved }),
  };
}

function holdsOf(score: Score, trays: number): Holds {
  if (score.cost === score.lowerBound) return 'optimal';
  if (score.leftOutTrays === 0) return 'feasible';
  return score.leftOutTrays === trays ? 'nothing' : 'partial';
}

function notesOf(solution: Solution): string[] {
  const { packing } = solution;
  if (packing.packing !== null) {
    return packing.packing.isRelaxed
      ? ['Loads per deck: the integer program was too large or too slow; the search began without it.']
      : [];
  }
  if (packing.because === 'no-chambers') return [];
  return ['Loads per deck: the program was too large or gave no answer; the search and the bound went on without it.'];
}

/** The plan, without cautions: those are read off its tasks. */
export function planOf(scenario: Scenario, compiled: Compiled, solution: Solution, origin: PlanOrigin, mayAsk: MayAsk): Plan {
  const schedule = scheduleOfDay(compiled, solution.schedule);
  const names = namesOf(compiled, schedule);
  const tasks: Task[] = planTasks(compiled, schedule, names);
  const decks = pathOfDay(scenario, compiled, solution.schedule);
  const score = scoreOf(scenario, compiled, solution, names, tasks, decks);
  const { clock } = compiled;
  return {
    plan: 1,
    scenario: { name: scenario.name, date: scenario.date, timeZone: scenario.timeZone, fingerprint: fingerprint(scenario) },
    day: { startsAt: instantAt(clock, 0), endsAt: instantAt(clock, clock.minutes), minutes: clock.minutes },
    stopped: score.cost === score.lowerBound ? 'proved' : solution.stopped,
    holds: holdsOf(score, compiled.trays.length),
    score,
    bound: { argument: solution.bound.argument.kind, says: boundWords(scenario, compiled, solution.bound.argument) },
    tasks,
    decks,
    batches: batchesOfPlan(compiled, names),
    orders: planOrders(scenario, compiled, names),
    leftOut: leftOutOf(compiled, solution, names, mayAsk),
    bakehouse: bakehouseOf(scenario, clock),
    cautions: [],
    solver: {
      seed: origin.seed,
      effort: solution.rounds,
      seconds: origin.seconds,
      version: origin.version,
      notes: notesOf(solution),
    },
  };
}
