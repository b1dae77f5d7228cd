// The forms in which a posted plan is fetched: data, pages of the sheet, what to do, a calendar. Used by days.ts.
import type { PostedRecord } from '../../store/store.ts';
import type { Jobs } from '../jobs/jobs.ts';
import type { Asker } from '../light/lightLine.ts';
import { Problem } from '../problem.ts';

export type PostedForm = {
  readonly suffix: '' | '.svg' | '.txt' | '.ics';
  readonly mediaType: string;
  readonly hasPages: boolean;
  /** `page` counts from 1. */
  readonly text: (posted: PostedRecord, page: number, jobs: Jobs, asker: Asker) => Promise<string>;
};

/** As it can be put back again, and what a client needs to know of it. */
export function postedJson({ date, revision, postedAt, timeZone, pages, scenario, plan }: PostedRecord): string {
  const entry = JSON.stringify({ date, revision, postedAt, timeZone, pages: pages.length });
  // Plan and scenario are JSON already: taking a large plan apart and together again would keep other requests waiting.
  return `${entry.slice(0, -1)},"scenario":${scenario},"plan":${plan}}`;
}

export const POSTED_JSON: PostedForm = {
  suffix: '',
  mediaType: 'application/json',
  hasPages: false,
  text: async (posted) => postedJson(posted),
};

const sheet: PostedForm = {
  suffix: '.svg',
  mediaType: 'image/svg+xml',
  hasPages: true,
  text: async ({ pages }, page) => {
    const text = pages[page - 1];
    if (text === undefined) throw new Problem(404, `The sheet has ${pages.length} ${pages.length === 1 ? 'page' : 'pages'}.`);
    return text;
  },
};

const list: PostedForm = {
  suffix: '.txt',
  mediaType: 'text/plain',
  hasPages: false,
  text: ({ plan }, _page, jobs, asker) => jobs.light('list', { plan }, asker),
};

const calendar: PostedForm = {
  suffix: '.ics',
  mediaType: 'text/calendar',
  hasPages: false,
  text: ({ plan, postedAt }, _page, jobs, asker) => jobs.light('calendar', { plan, instant: postedAt }, asker),
};

export const POSTED_FORMS: readonly PostedForm[] = [POSTED_JSON, sheet, list, calendar];
