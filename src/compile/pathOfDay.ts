// The decks' set points over the whole day: what they did until now, of a day under way, and what the schedule asks for after.
// Used by planOf.ts.
import type { Plan, SetPoint, Task } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { Schedule } from '../solver/problem.ts';
import type { Compiled } from './shopProblem.ts';
import { temperatureAt } from './sinceNow.ts';

const EPSILON = 1e-9;

const slopeOf = ({ start, end, fromC, toC }: SetPoint): number => (toC - fromC) / (end - start);

/** Moves in order; one that goes on where the last stopped, as fast, is the same move. */
function joined(moves: readonly SetPoint[]): SetPoint[] {
  const path: SetPoint[] = [];
  for (const move of moves) {
    const last = path.at(-1);
    const goesOn = last !== undefined && last.end === move.start && Math.abs(slopeOf(last) - slopeOf(move)) < EPSILON;
    if (goesOn) path[path.length - 1] = { ...last, end: move.end, toC: move.toC };
    else path.push(move);
  }
  return path;
}

/** Moves until now; one under way is cut off. */
function cutAt(moves: readonly SetPoint[], now: number): SetPoint[] {
  return moves.flatMap((move) => {
    if (move.start >= now) return [];
    return [move.end <= now ? move : { ...move, end: now, toC: temperatureAt(move, now) }];
  });
}

/** Set points of every deck; times count from the start of the day. */
export function pathOfDay(scenario: Scenario, compiled: Compiled, schedule: Schedule): Plan['decks'] {
  return compiled.problem.chambers.map((chamber, c) => {
    const before = scenario.underway?.decks.find(({ id }) => id === chamber.id)?.setPoints ?? [];
    const after = (schedule.moves[c] ?? []).map((move) => ({
      start: move.start + compiled.origin,
      end: move.end + compiled.origin,
      fromC: move.from,
      toC: move.to,
    }));
    return { id: chamber.id, setPoints: before.length === 0 ? after : joined([...cutAt(before, compiled.origin), ...after]) };
  });
}

/** Temperature changes of all decks: moves that go somewhere, less the first heat-up where nothing bakes before it ends. */
export function temperatureChanges(tasks: readonly Task[], decks: Plan['decks']): number {
  return decks.reduce((sum, { id, setPoints }) => {
    const moves = setPoints.filter(({ fromC, toC }) => fromC !== toC);
    const arrival = Math.min(...moves.map(({ end }) => end));
    const bakes = tasks.filter(({ step, place }) => step === 'bake' && place?.id === id);
    const isHot = bakes.some(({ start }) => start < arrival);
    return sum + (moves.length === 0 || isHot ? moves.length : moves.length - 1);
  }, 0);
}
