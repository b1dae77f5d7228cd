// PERSON_CANNOT: step of the task not among the steps the person cannot do; bake covers loading and unloading.
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { workByPerson } from '../personWork.ts';
import { sayMinute } from '../sayMinute.ts';

export function personCannot(day: JudgedDay): readonly Finding[] {
  const work = workByPerson(day);
  return (day.scenario.people ?? []).flatMap(({ id, cannot }) =>
    (work.get(id) ?? [])
      .filter(({ step }) => cannot.includes(step))
      .map(({ taskId, step, start, end, for: what }) => ({
        says: `${id} is given ${taskId} (${what}) at ${sayMinute(day.clock, start)} and cannot ${step}.`,
        taskIds: [taskId],
        minute: start,
        until: end,
      })),
  );
}
