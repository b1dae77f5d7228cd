// BOWL_CAPACITY: at every minute, batches in a mixer bowl <= 1.
import { crowdFindings } from '../crowding.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function bowlCapacity(day: JudgedDay): readonly Finding[] {
  return crowdFindings(day, 'bowl', 'batches');
}
