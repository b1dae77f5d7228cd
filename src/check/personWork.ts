// All hands-on work of the plan, person by person, in the order of its minutes.
import type { HandsOn } from '../model/plan.ts';
import type { StepKind } from '../model/steps.ts';
import type { JudgedDay } from './judgedDay.ts';

export type PersonWork = HandsOn & { readonly taskId: string; readonly step: StepKind };

export function workByPerson(day: JudgedDay): ReadonlyMap<string, readonly PersonWork[]> {
  const byPerson = new Map<string, PersonWork[]>();
  for (const { id, task } of day.tasks) {
    for (const work of task.handsOn) {
      const own = byPerson.get(work.person) ?? [];
      own.push({ ...work, taskId: id, step: task.step });
      byPerson.set(work.person, own);
    }
  }
  for (const own of byPerson.values()) own.sort((a, b) => a.start - b.start || a.end - b.end);
  return byPerson;
}
