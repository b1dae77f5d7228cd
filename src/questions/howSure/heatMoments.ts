// The heat of a deck as moments: each move of its set point begins when what it would spoil is out, and what needs the new heat
// waits for it. Moves are cut where they enter or leave the temperatures of a bake, so that a slow one may pass through several.
import type { DeckDay } from '../../check/deckDays.ts';
import type { SetPoint } from '../../model/plan.ts';
import { rangeOf } from '../../model/units.ts';
import { at, type CourseDraft } from './courseDraft.ts';
import type { LoadMoments } from './loadMoments.ts';

type Piece = SetPoint & { readonly fastestMinutes: number };

type HeatedBake = {
  readonly minC: number;
  readonly maxC: number;
  readonly start: number;
  readonly end: number;
  readonly moments: LoadMoments;
};

/** Room for adding up decimals, in C and in minutes. */
const NEARLY_C = 1e-6;
const NEARLY_MINUTES = 1e-3;

function heatedBakes(loads: readonly LoadMoments[]): readonly HeatedBake[] {
  return loads.flatMap((moments) =>
    moments.load.bakes.map(({ step, named }) => {
      const { min, max } = rangeOf(step.temperatureC);
      return { minC: min, maxC: max, start: named.task.start, end: named.task.end, moments };
    }),
  );
}

/** A move cut at the temperatures at which some bake can begin or must be out. */
function cut(move: SetPoint, temperatures: readonly number[], ratePerMinute: number): readonly Piece[] {
  const { fromC, toC, start, end } = move;
  const low = Math.min(fromC, toC) + NEARLY_C;
  const high = Math.max(fromC, toC) - NEARLY_C;
  const inside = [...new Set(temperatures)].filter((celsius) => celsius > low && celsius < high);
  inside.sort((a, b) => (toC > fromC ? a - b : b - a));
  const bounds = [fromC, ...inside, toC];
  const minuteAt = (celsius: number): number => start + ((end - start) * (celsius - fromC)) / (toC - fromC);
  return bounds.slice(1).map((celsius, index) => {
    const before = bounds[index] ?? fromC;
    const fastestMinutes = Math.abs(celsius - before) / ratePerMinute;
    return { fromC: before, toC: celsius, start: minuteAt(before), end: minuteAt(celsius), fastestMinutes };
  });
}

/** Whether the deck is outside the temperatures of a bake while a piece lasts. Pieces are cut, so one look is enough. */
function isOutside({ fromC, toC }: Piece, bake: HeatedBake): boolean {
  const middleC = (fromC + toC) / 2;
  return middleC < bake.minC || middleC > bake.maxC;
}

type PlacedPiece = { readonly piece: Piece; readonly begins: number; readonly ends: number };

/** Moments of the pieces, one after the other: there by the planned minute where the oven's rate allows it. */
function placed(draft: CourseDraft, pieces: readonly Piece[]): readonly PlacedPiece[] {
  let before = -1;
  return pieces.map((piece) => {
    const begins = draft.addMoment(piece.start, 'sheet');
    const ends = draft.addMoment(piece.end, 'sheet');
    if (before >= 0) draft.comesAfter(begins, at(before, -NEARLY_MINUTES));
    draft.comesAfter(ends, at(begins, piece.fastestMinutes - NEARLY_MINUTES));
    before = ends;
    return { piece, begins, ends };
  });
}

export function heatMoments(draft: CourseDraft, deck: DeckDay, loads: readonly LoadMoments[]): void {
  const bakes = heatedBakes(loads);
  const temperatures = bakes.flatMap(({ minC, maxC }) => [minC, maxC]);
  const { heatUpCPerMinute, coolDownCPerMinute } = deck.oven;
  const moves = [...deck.setPoints].filter(({ fromC, toC }) => fromC !== toC).sort((a, b) => a.start - b.start);
  const pieces = placed(
    draft,
    moves.flatMap((move) => cut(move, temperatures, move.toC > move.fromC ? heatUpCPerMinute : coolDownCPerMinute)),
  );
  for (const bake of bakes) {
    const outside = pieces.filter(({ piece }) => isOutside(piece, bake));
    const { loading, unloading, lead } = bake.moments;
    // The last such piece before the bake: the ones before it are before that. The first one after it likewise.
    const before = outside.filter(({ piece }) => piece.end <= bake.start + NEARLY_MINUTES).pop();
    const after = outside.find(({ piece }) => piece.start >= bake.end - NEARLY_MINUTES);
    if (before !== undefined)
      draft.comesAfter(loading, { from: before.ends, minutes: -lead.minutes, draw: lead.draw, plus: -NEARLY_MINUTES });
    if (after !== undefined) draft.comesAfter(after.begins, at(unloading, -NEARLY_MINUTES));
  }
}
