// Set points that move at other times, or are new, or no longer move, in lines people can call. Used by moved.ts.
import type { Plan, SetPoint } from '../../model/plan.ts';
import type { ChangeLine } from '../../model/replanAnswer.ts';
import type { TrayNames } from './trayNames.ts';

type Words = { readonly names: TrayNames; readonly says: (minute: number) => string };

const degrees = (celsius: number): string => `${Math.round(celsius * 10) / 10} °C`;

/** Moves of a deck from now on; one under way begins now. */
function movesFrom(plan: Plan, deck: string, now: number): readonly SetPoint[] {
  const moves = plan.decks.find(({ id }) => id === deck)?.setPoints ?? [];
  return moves
    .filter(({ end, fromC, toC }) => end > now && fromC !== toC)
    .map((move) => ({ ...move, start: Math.max(now, move.start) }));
}

function deckLines(before: Plan, after: Plan, deck: string, now: number, { names, says }: Words): readonly ChangeLine[] {
  const line = (minute: number, text: string): ChangeLine => ({
    kind: 'heat',
    minute,
    says: `${names.place(deck)}: ${text}.`,
    trays: [],
    batches: [],
    steps: [],
  });
  const waiting = [...movesFrom(before, deck, now)];
  const lines = movesFrom(after, deck, now).flatMap((move) => {
    const at = waiting.findIndex(({ toC }) => Math.abs(toC - move.toC) < 0.5);
    const skipped = at < 0 ? [] : waiting.splice(0, at + 1);
    const was = skipped.at(-1);
    const dropped = skipped.slice(0, -1).map((one) => line(one.start, `no longer to ${degrees(one.toC)} at ${says(one.start)}`));
    if (was === undefined)
      return [line(move.start, `to ${degrees(move.toC)} at ${says(move.start)}, there at ${says(move.end)}`)];
    if (was.start === move.start) return dropped;
    return [...dropped, line(move.start, `to ${degrees(move.toC)} at ${says(move.start)} instead of ${says(was.start)}`)];
  });
  return [...lines, ...waiting.map((one) => line(one.start, `no longer to ${degrees(one.toC)} at ${says(one.start)}`))];
}

export function heatLines(before: Plan, after: Plan, now: number, words: Words): readonly ChangeLine[] {
  return after.bakehouse.decks.flatMap(({ id }) => deckLines(before, after, id, now, words));
}
