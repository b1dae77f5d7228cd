// The temperature of a deck through the day, and its moves with the words for them.
import type { Plan, SetPoint } from '../model/plan.ts';

export type HeatMove = SetPoint & {
  /** The first heat-up of the deck; it is not a temperature change. */
  readonly isFirst: boolean;
};

export type DeckHeat = {
  readonly startsAtC: number;
  readonly moves: readonly HeatMove[];
};

/** Heat of one deck. A deck that was good for its first bake as it stood has no first heat-up: every move is a change. */
export function deckHeatOf(plan: Plan, deckId: string): DeckHeat {
  const startsAtC = plan.bakehouse.decks.find((deck) => deck.id === deckId)?.startsAtC ?? 20;
  const setPoints = (plan.decks.find((deck) => deck.id === deckId)?.setPoints ?? []).filter((move) => move.fromC !== move.toC);
  const bakeStarts = plan.tasks.filter((task) => task.step === 'bake' && task.place?.id === deckId).map((task) => task.start);
  const firstBake = Math.min(...bakeStarts);
  const wasGood = setPoints.every((move) => move.end > firstBake);
  return { startsAtC, moves: setPoints.map((move, index) => ({ ...move, isFirst: index === 0 && !wasGood })) };
}

/** Temperature in C at a minute. */
export function temperatureAt(heat: DeckHeat, minute: number): number {
  let nowC = heat.startsAtC;
  for (const move of heat.moves) {
    if (minute < move.start) break;
    if (minute >= move.end) nowC = move.toC;
    else return move.fromC + ((move.toC - move.fromC) * (minute - move.start)) / (move.end - move.start);
  }
  return nowC;
}

/** "230 °C", with a blank that never breaks. */
export function degrees(celsius: number): string {
  return `${Math.round(celsius * 10) / 10}\u00a0°C`;
}

/** "heat to", "up to" or "down to". */
export function moveWord(move: HeatMove): string {
  if (move.isFirst && move.toC > move.fromC) return 'heat to';
  return move.toC > move.fromC ? 'up to' : 'down to';
}
