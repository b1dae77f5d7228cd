// UNKNOWN_PLACE, MOVE_OUT_OF_ORDER: decks that a day under way tells of are there, and their moves follow one another and have
// begun by now.
import type { SetPoint } from '../../model/plan.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';
import { deckIds } from './deckIds.ts';
import { unknownAmong } from './unknownAmong.ts';

function moveWrong(move: SetPoint, before: SetPoint | undefined, now: number | undefined): string | undefined {
  if (move.end < move.start) return `ends at minute ${move.end}, before it begins`;
  if (before !== undefined && move.start < before.end) return `begins before the last one ends at minute ${before.end}`;
  if (now !== undefined && move.start > now) return `begins after now, minute ${now}`;
  return undefined;
}

export function underwayDecks(parts: Parts): readonly CodedError[] {
  const { underway } = parts;
  if (underway === undefined) return [];
  const named = underway.decks.sound.map(({ at, value: { id } }) => ({
    at: `${at}/id`,
    id,
    says: `The decks under way name the deck ${shown(id)}`,
  }));
  const moves = underway.decks.sound.flatMap(({ at, value: { id, setPoints } }) =>
    setPoints.flatMap((move, index) => {
      const wrong = moveWrong(move, setPoints[index - 1], underway.now);
      if (wrong === undefined) return [];
      const says = `The move of deck ${shown(id)} from minute ${move.start} ${wrong}.`;
      const doThis = 'Write the moves that have begun by now, one after the other.';
      return [inputErrorAt('MOVE_OUT_OF_ORDER', `${at}/setPoints/${index}`, says, doThis)];
    }),
  );
  return [...unknownAmong('UNKNOWN_PLACE', 'deck', deckIds(parts), named), ...moves];
}
