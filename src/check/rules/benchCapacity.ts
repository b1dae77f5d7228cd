// BENCH_CAPACITY: at every minute, batches and trays worked on the bench <= its places.
import { crowdFindings } from '../crowding.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function benchCapacity(day: JudgedDay): readonly Finding[] {
  return crowdFindings(day, 'bench', 'trays and batches');
}
