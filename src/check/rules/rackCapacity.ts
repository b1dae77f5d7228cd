// RACK_CAPACITY: at every minute, trays on the cooling rack, waiting ones included, <= the trays it holds.
import { crowdFindings } from '../crowding.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function rackCapacity(day: JudgedDay): readonly Finding[] {
  return crowdFindings(day, 'rack', 'trays');
}
