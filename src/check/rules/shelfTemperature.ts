// SHELF_TEMPERATURE: lowest allowed <= temperature of the proofer <= highest allowed, for each proof that states a range.
import { cabinetFindings } from '../cabinets.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function shelfTemperature(day: JudgedDay): readonly Finding[] {
  return cabinetFindings(day, 'shelf');
}
