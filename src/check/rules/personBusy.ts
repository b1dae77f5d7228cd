// PERSON_BUSY: of two pieces of work of one person, start of the later >= end of the earlier.
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { type PersonWork, workByPerson } from '../personWork.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

function personFindings(day: JudgedDay, person: string, work: readonly PersonWork[]): readonly Finding[] {
  const findings: Finding[] = [];
  let earlier: PersonWork | undefined;
  for (const later of work) {
    if (earlier !== undefined && later.start < earlier.end && later.end > later.start) {
      const until = Math.min(earlier.end, later.end);
      const says =
        `At ${sayMinute(day.clock, later.start)} ${person} is at ${earlier.taskId} (${earlier.for}) and at ${later.taskId} ` +
        `(${later.for}) for ${sayMinutes(until - later.start)}.`;
      findings.push({ says, taskIds: [earlier.taskId, later.taskId], minute: later.start, until });
    }
    if (earlier === undefined || later.end > earlier.end) earlier = later;
  }
  return findings;
}

export function personBusy(day: JudgedDay): readonly Finding[] {
  return [...workByPerson(day)].flatMap(([person, work]) => personFindings(day, person, work));
}
