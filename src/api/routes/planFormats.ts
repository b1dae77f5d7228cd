// What a plan is beside JSON: pages of the sheet, a calendar, the list of what to do. Used by plans.ts and questions.ts.
import type { Plan } from '../../model/plan.ts';
import type { Work } from '../jobs/work.ts';
import { Problem } from '../problem.ts';
import type { WorkFormat } from './workFormat.ts';

/** Work of other kinds has no plan, and neither has work that has found none. */
function planOf({ kind, answer }: Work): Plan {
  if (answer !== null && kind === 'plan' && 'tasks' in answer) return answer;
  if (answer !== null && kind === 'replan' && 'movedTasks' in answer) return answer.plan;
  throw new Problem(404, 'There is no plan yet.');
}

function planIn(work: Work): string {
  return JSON.stringify(planOf(work));
}

/** One of the pages drawn, from 1. */
export function pageOf(pages: readonly string[], number: number): string {
  const page = pages[number - 1];
  if (page === undefined) throw new Problem(404, 'There is no such page.');
  return page;
}

export const PLAN_FORMATS: readonly WorkFormat[] = [
  {
    suffix: '.svg',
    mediaType: 'image/svg+xml',
    write: async (work, { jobs }, asker, number) => pageOf(await jobs.light('pages', { plan: planIn(work) }, asker), number),
  },
  {
    suffix: '.ics',
    mediaType: 'text/calendar',
    write: async (work, { jobs, instant }, asker) =>
      jobs.light('calendar', { plan: planIn(work), instant: work.endedAt ?? instant() }, asker),
  },
  {
    suffix: '.txt',
    mediaType: 'text/plain',
    write: async (work, { jobs }, asker) => jobs.light('list', { plan: planIn(work) }, asker),
  },
];
