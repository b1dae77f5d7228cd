// SHELF_CAPACITY: at every minute, trays in a proofer, waiting ones included, <= shelves x traysPerShelf.
import { crowdFindings } from '../crowding.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function shelfCapacity(day: JudgedDay): readonly Finding[] {
  return crowdFindings(day, 'shelf', 'trays');
}
