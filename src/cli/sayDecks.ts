// Each deck's heat through the day. Part of the terminal summary.
import { dayClockOf } from '../draw/dayClock.ts';
import type { Plan, SetPoint, Task } from '../model/plan.ts';
import { columns } from './columns.ts';
import { sayTime } from './sayTime.ts';

/** Most moves listed one by one for a deck. */
const MAX_MOVES = 5;

/** Moves after the first arrival: the first heat-up is not a temperature change, unless the deck was hot enough to bake before it ended. */
function temperatureChanges(moves: readonly SetPoint[], bakes: readonly Task[]): number {
  const [first] = moves;
  if (first === undefined) return 0;
  return bakes.some((bake) => bake.start < first.end) ? moves.length : moves.length - 1;
}

function sayChanges(count: number): string {
  if (count === 0) return 'no temperature change';
  return count === 1 ? '1 temperature change' : `${count} temperature changes`;
}

/** Two ovens may both have a "Top deck"; then the id tells them apart. */
function nameIn(decks: Plan['bakehouse']['decks'], deck: { readonly id: string; readonly name: string }): string {
  return decks.filter(({ name }) => name === deck.name).length === 1 ? deck.name : `${deck.name} (${deck.id})`;
}

export function sayDecks(plan: Plan): readonly string[] {
  const clock = dayClockOf(plan);
  const rows = plan.bakehouse.decks.map((deck) => {
    const bakes = plan.tasks.filter((task) => task.step === 'bake' && task.place?.id === deck.id);
    const setPoints = plan.decks.find(({ id }) => id === deck.id)?.setPoints ?? [];
    const moves = setPoints.filter((move) => move.fromC !== move.toC);
    const name = nameIn(plan.bakehouse.decks, deck);
    if (bakes.length === 0) return [name, 'not used'];
    const path = moves.slice(0, MAX_MOVES).map((move) => `${move.toC} C from ${sayTime(clock, move.end)}`);
    if (moves.length > MAX_MOVES) path.push('and on');
    if (moves.length === 0) path.push(`${deck.startsAtC} C all day`);
    return [name, sayChanges(temperatureChanges(moves, bakes)), path.join(', ')];
  });
  return columns(rows);
}
