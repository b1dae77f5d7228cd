// DECK_CAPACITY: at every minute, trays on a deck <= the trays it holds.
import { crowdFindings } from '../crowding.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function deckCapacity(day: JudgedDay): readonly Finding[] {
  return crowdFindings(day, 'deck', 'trays');
}
