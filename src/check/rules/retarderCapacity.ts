// RETARDER_CAPACITY: at every minute, trays and batches in a retarder, waiting ones included, <= shelves x traysPerShelf.
import { crowdFindings } from '../crowding.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function retarderCapacity(day: JudgedDay): readonly Finding[] {
  return crowdFindings(day, 'retarder', 'trays and batches');
}
