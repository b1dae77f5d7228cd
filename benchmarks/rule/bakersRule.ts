// A baker's rule of thumb as a planner of its own: longest proof first, whatever fits next. Minute by minute, the batch with
// the longest proof whose whole way through the bakehouse is free begins; nothing is ever taken back. For comparison only.
import type { Compiled } from '../../src/compile/shopProblem.ts';
import { movesOf } from '../../src/solver/moves.ts';
import type { Schedule } from '../../src/solver/problem.ts';
import { BatchWay } from './batchWay.ts';
import { Occupied } from './occupied.ts';

/** Shortest proof of a batch's slowest tray, in minutes. */
function proofMinutes(compiled: Compiled, batch: number): number {
  const steps = compiled.stepOfTask.flatMap((each) => (each?.batch === batch && each.step.do === 'proof' ? [each] : []));
  return Math.max(0, ...steps.map((each) => compiled.problem.tasks[each.task]?.minDuration ?? 0));
}

/** Batches of one dough with the same trays: where one does not fit, the other does not either. */
function looks(compiled: Compiled, batch: number): string {
  const { dough, trays } = compiled.batches[batch] ?? { dough: { id: '' }, trays: [] };
  return [dough.id, ...trays.map((product) => product.id).sort()].join(' ');
}

/** The schedule of the rule. Batches it finds no room for are left out. */
export function bakersRule(compiled: Compiled): Schedule {
  const { problem } = compiled;
  const occupied = new Occupied(problem);
  const way = new BatchWay(compiled, occupied);
  let waiting = compiled.batches
    .map((_, batch) => ({ batch, proof: proofMinutes(compiled, batch), looks: looks(compiled, batch) }))
    .sort((a, b) => b.proof - a.proof || a.batch - b.batch);
  for (let minute = 0; minute < problem.horizon && waiting.length > 0; minute++) {
    const refused = new Set<string>();
    waiting = waiting.filter((next) => {
      if (!refused.has(next.looks) && way.begin(next.batch, minute)) return false;
      refused.add(next.looks);
      return true;
    });
  }
  const moves = problem.chambers.map((chamber, c) => movesOf(chamber, occupied.staysOf(c), problem.horizon));
  return { ...way.schedule(), moves };
}
