// STAYS_DECIDED: of a planned step that keeps its time: start = its start; its place: kind and id = its place's; its people: the
// people for each kind of work = its people's. On a deck loaded together the people are those of the load.
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay, StepRun } from '../judgedDay.ts';
import { isOfTogetherOven } from '../loadedTogether.ts';
import { isSamePlace, whoDoesWhat } from '../sameWork.ts';
import { sayMinute } from '../sayMinute.ts';

/** A load's work stands on one of its trays; a tray that carries none has nobody to keep. */
function hasOtherPeople(day: JudgedDay, run: StepRun): boolean {
  const was = run.record?.handsOn ?? [];
  const isOfLoad = isOfTogetherOven(day, run);
  if (isOfLoad && was.length === 0) return false;
  const is = isOfLoad ? (run.load?.carrier.task.handsOn ?? []) : run.named.task.handsOn;
  return whoDoesWhat(was) !== whoDoesWhat(is);
}

function runFindings(day: JudgedDay, run: StepRun): readonly Finding[] {
  const { record, named } = run;
  if (record === undefined || record.state !== 'planned') return [];
  const { id, task } = named;
  const at = (minute: number) => sayMinute(day.clock, minute);
  const says: string[] = [];
  if (record.keeps.includes('time') && task.start !== record.start) {
    says.push(`${id} stays at ${at(record.start)}; the plan has it at ${at(task.start)}.`);
  }
  if (record.keeps.includes('place') && !isSamePlace(record.place, task.place)) {
    says.push(`${id} stays in ${record.place?.id}; the plan has it in ${task.place?.id}.`);
  }
  if (record.keeps.includes('people') && hasOtherPeople(day, run)) {
    const people = record.handsOn.map((work) => `${work.person} (${work.for})`);
    says.push(`${id} stays with ${people.length === 0 ? 'nobody' : people.join(', ')}; the plan has other people at it.`);
  }
  return says.map((text) => ({ says: text, taskIds: [id], minute: task.start }));
}

export function staysDecided(day: JudgedDay): readonly Finding[] {
  return day.scenario.underway === undefined ? [] : allRuns(day).flatMap((run) => runFindings(day, run));
}
