// RETARDER_TEMPERATURE: lowest allowed <= temperature of the retarder <= highest allowed, for each retard and each bulk in a
// retarder that states a range.
import { cabinetFindings } from '../cabinets.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function retarderTemperature(day: JudgedDay): readonly Finding[] {
  return cabinetFindings(day, 'retarder');
}
