// PERSON_HOURS: from <= start and end <= until of the person's hours; for each break, end <= from or start >= until.
import type { Person } from '../../model/scenario.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { type PersonWork, workByPerson } from '../personWork.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

function personFindings(day: JudgedDay, person: Person, work: readonly PersonWork[]): readonly Finding[] {
  const spanOf = ({ from, until }: { readonly from: string; readonly until: string }) => ({
    start: day.minuteOf(from),
    end: day.minuteOf(until),
  });
  const hours = spanOf(person);
  const breaks = person.breaks.map(spanOf);
  const say = (minute: number) => sayMinute(day.clock, minute);
  return work.flatMap(({ taskId, start, end, for: what }) => {
    const found = (says: string, until: number): Finding => ({
      says: `${person.id} is at ${taskId} (${what}) ${say(start)} to ${say(end)}, ${says}.`,
      taskIds: [taskId],
      minute: start,
      until: Math.min(end, until),
    });
    return [
      ...(start < hours.start ? [found(`${sayMinutes(hours.start - start)} before their hours begin`, hours.start)] : []),
      ...(end > hours.end ? [found(`${sayMinutes(end - hours.end)} after their hours end`, end)] : []),
      ...breaks
        .filter((rest) => start < rest.end && end > rest.start)
        .map((rest) => found(`into their break ${say(rest.start)} to ${say(rest.end)}`, rest.end)),
    ];
  });
}

export function personHours(day: JudgedDay): readonly Finding[] {
  const work = workByPerson(day);
  return (day.scenario.people ?? []).flatMap((person) => personFindings(day, person, work.get(person.id) ?? []));
}
