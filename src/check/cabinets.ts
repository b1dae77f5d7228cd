// Compares the temperature of a proofer or retarder with the range a step allows. Used by both temperature rules.
import type { BatchStep, TrayStep } from '../model/steps.ts';
import { type Range, rangeOf } from '../model/units.ts';
import type { Finding } from './finding.ts';
import { allRuns } from './hands.ts';
import type { JudgedDay } from './judgedDay.ts';
import { placeKindOf } from './places.ts';
import { sayC, sayMinute } from './sayMinute.ts';

function allowedC(step: BatchStep | TrayStep): Range | undefined {
  if (step.do !== 'bulk' && step.do !== 'proof' && step.do !== 'retard') return undefined;
  return step.temperatureC === undefined ? undefined : rangeOf(step.temperatureC);
}

/** Every step in a cabinet of this kind whose temperature is outside the step's range, bounds included. */
export function cabinetFindings(day: JudgedDay, kind: 'shelf' | 'retarder'): readonly Finding[] {
  const { proofers, retarders } = day.scenario.equipment;
  const keptC = new Map((kind === 'shelf' ? proofers : retarders).map(({ id, temperatureC }) => [id, temperatureC]));
  return allRuns(day).flatMap(({ step, named: { id, task } }) => {
    if (placeKindOf(step) !== kind || task.place?.kind !== kind) return [];
    const range = allowedC(step);
    const actualC = keptC.get(task.place.id);
    if (range === undefined || actualC === undefined) return [];
    if (actualC >= range.min && actualC <= range.max) return [];
    const by = actualC < range.min ? `${sayC(range.min - actualC)} too cold` : `${sayC(actualC - range.max)} too warm`;
    const says =
      `${id} from ${sayMinute(day.clock, task.start)} stands in ${task.place.id} at ${sayC(actualC)}, ${by}: ` +
      `it allows ${sayC(range.min)} to ${sayC(range.max)}.`;
    return [{ says, taskIds: [id], minute: task.start, until: task.end }];
  });
}
