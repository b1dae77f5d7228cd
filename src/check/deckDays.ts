// Each deck's temperature minute by minute, followed along the set points a plan states.
import type { Deck, Oven } from '../model/equipment.ts';
import type { SetPoint } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';

export type DeckDay = {
  readonly id: string;
  readonly oven: Oven;
  readonly deck: Deck;
  /** Moves as the plan states them, in its order. */
  readonly setPoints: readonly SetPoint[];
  /** Temperature in C at each whole minute, the day's last included. */
  readonly temperatureC: readonly number[];
};

/** Temperature within a move that is under way: it moves evenly. */
function onTheWayC(move: SetPoint, minute: number): number {
  return move.fromC + ((move.toC - move.fromC) * (minute - move.start)) / (move.end - move.start);
}

/** Temperature in C at each minute from 0 to `dayMinutes`, included, along the moves. */
export function temperatures(startsAtC: number, setPoints: readonly SetPoint[], dayMinutes: number): readonly number[] {
  const moves = [...setPoints].sort((a, b) => a.start - b.start || a.end - b.end);
  const temperatureC: number[] = [];
  let heldC = startsAtC;
  let next = 0;
  for (let minute = 0; minute <= dayMinutes; minute++) {
    let move = moves[next];
    while (move !== undefined && move.end <= minute) {
      heldC = move.toC;
      next++;
      move = moves[next];
    }
    temperatureC.push(move !== undefined && move.start <= minute ? onTheWayC(move, minute) : heldC);
  }
  return temperatureC;
}

/** From when on a move is over; one that begins at a minute and takes none is over the minute after. */
export function movedUntil({ start, end }: SetPoint): number {
  return Math.max(end, start + 1);
}

/** Every deck of the scenario by oven/deck. A deck the plan says nothing of holds the temperature it starts at. */
export function deckDays(scenario: Scenario, plan: WrittenPlan, dayMinutes: number): ReadonlyMap<string, DeckDay> {
  const stated = new Map(plan.decks.map(({ id, setPoints }) => [id, setPoints]));
  return new Map(
    scenario.equipment.ovens.flatMap((oven) =>
      oven.decks.map((deck) => {
        const id = `${oven.id}/${deck.id}`;
        const setPoints = stated.get(id) ?? [];
        return [id, { id, oven, deck, setPoints, temperatureC: temperatures(deck.startsAtC, setPoints, dayMinutes) }];
      }),
    ),
  );
}
