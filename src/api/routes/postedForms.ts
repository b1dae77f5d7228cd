// The forms in which a posted plan is fetched: data, pages of the sheet, what to do, a calendar. Used by days.ts.
import { whatToDo } from '../../draw/whatToDo.ts';
import { type Plan, planSchema } from '../../model/plan.ts';
import type { PostedRecord } from '../../store/store.ts';
import { calendarOf } from '../calendar.ts';
import { doingList } from '../doingList.ts';
import { Problem } from '../problem.ts';

export type PostedForm = {
  readonly suffix: '' | '.svg' | '.txt' | '.ics';
  readonly mediaType: string;
  readonly hasPages: boolean;
  /** `page` counts from 1. */
  readonly text: (posted: PostedRecord, page: number) => string;
};

function planOf({ plan }: PostedRecord): Plan {
  return planSchema.parse(JSON.parse(plan));
}

/** As it can be put back again, and what a client needs to know of it. */
export const POSTED_JSON: PostedForm = {
  suffix: '',
  mediaType: 'application/json',
  hasPages: false,
  text: ({ date, revision, postedAt, timeZone, pages, scenario, plan }) => {
    const entry = JSON.stringify({ date, revision, postedAt, timeZone, pages: pages.length });
    // Plan and scenario are JSON already: taking a large plan apart and together again would keep other requests waiting.
    return `${entry.slice(0, -1)},"scenario":${scenario},"plan":${plan}}`;
  },
};

const sheet: PostedForm = {
  suffix: '.svg',
  mediaType: 'image/svg+xml',
  hasPages: true,
  text: ({ pages }, page) => {
    const text = pages[page - 1];
    if (text === undefined) throw new Problem(404, `The sheet has ${pages.length} ${pages.length === 1 ? 'page' : 'pages'}.`);
    return text;
  },
};

const list: PostedForm = {
  suffix: '.txt',
  mediaType: 'text/plain',
  hasPages: false,
  text: (posted) => {
    const plan = planOf(posted);
    return doingList(plan, whatToDo(plan));
  },
};

const calendar: PostedForm = {
  suffix: '.ics',
  mediaType: 'text/calendar',
  hasPages: false,
  text: (posted) => calendarOf(planOf(posted), posted.postedAt),
};

export const POSTED_FORMS: readonly PostedForm[] = [POSTED_JSON, sheet, list, calendar];
