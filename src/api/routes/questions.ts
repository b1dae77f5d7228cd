// /v1/fits, /v1/comparisons and /v1/replans: questions that take more than one plan. Mounted by createApp.ts.
import { type Request, Router } from 'express';
import { whatToDo } from '../../draw/whatToDo.ts';
import type { Comparison } from '../../model/comparison.ts';
import type { Plan } from '../../model/plan.ts';
import { plainBody } from '../bodyValue.ts';
import { calendarOf } from '../calendar.ts';
import { doingList } from '../doingList.ts';
import type { Ask, Work, WorkLimits } from '../jobs/work.ts';
import { bodyType } from '../mediaType.ts';
import type { ApiParts } from '../parts.ts';
import { planQuery } from '../planQuery.ts';
import { Problem } from '../problem.ts';
import { comparisonAsk } from './comparisons.ts';
import { fitAsk } from './fits.ts';
import { replanAsk } from './replans.ts';
import type { WorkFormat } from './workFormat.ts';
import type { WorkKindRoutes } from './workKindRoutes.ts';
import { workRoutes } from './workRoutes.ts';

const READS = ['application/json'] as const;

/** Seconds when a request sets no limit: a question takes more than one plan. */
const USUAL_SECONDS = { fit: 3, comparison: 15, replan: 5 } as const;

type QuestionKind = keyof typeof USUAL_SECONDS;
type ReadsAsk = (body: unknown, limits: WorkLimits, parts: ApiParts) => Ask;

function page(pages: readonly string[], number: number): string {
  const text = pages[number - 1];
  if (text === undefined) throw new Problem(404, 'There is no such page.');
  return text;
}

function comparisonIn({ answer }: Work): Comparison {
  if (answer !== null && 'comparison' in answer) return answer;
  throw new Problem(404, 'There is no comparison yet.');
}

/** The plan of a re-plan. */
function planIn({ answer }: Work): Plan {
  if (answer !== null && 'movedTasks' in answer) return answer.plan;
  throw new Problem(404, 'There is no plan yet.');
}

const curves: WorkFormat = {
  suffix: '.svg',
  mediaType: 'image/svg+xml',
  write: async (work, { jobs }, number) => page(await jobs.draw('comparison', JSON.stringify(comparisonIn(work))), number),
};

const sheet: WorkFormat = {
  suffix: '.svg',
  mediaType: 'image/svg+xml',
  write: async (work, { jobs }, number) => page(await jobs.draw('pages', JSON.stringify(planIn(work))), number),
};

const calendar: WorkFormat = {
  suffix: '.ics',
  mediaType: 'text/calendar',
  write: async (work, { instant }) => calendarOf(planIn(work), work.endedAt ?? instant()),
};

const list: WorkFormat = {
  suffix: '.txt',
  mediaType: 'text/plain',
  write: async (work) => doingList(planIn(work), whatToDo(planIn(work))),
};

function routesOf(kind: QuestionKind, readsAsk: ReadsAsk, formats: readonly WorkFormat[], parts: ApiParts): WorkKindRoutes {
  const limitsIn = ({ query }: Request): WorkLimits => planQuery(query, { ...parts.limits, usualSeconds: USUAL_SECONDS[kind] });
  return {
    kind,
    refuseEarly: (request) => {
      bodyType(request, READS);
      limitsIn(request);
    },
    readAsk: (request) => {
      const ask = readsAsk(plainBody(request), limitsIn(request), parts);
      return { ask, asked: JSON.stringify(ask) };
    },
    formats,
  };
}

export function questionRoutes(parts: ApiParts): Router {
  const router = Router({ caseSensitive: true });
  router.use('/fits', workRoutes(parts, routesOf('fit', fitAsk, [], parts)));
  router.use('/comparisons', workRoutes(parts, routesOf('comparison', comparisonAsk, [curves], parts)));
  router.use('/replans', workRoutes(parts, routesOf('replan', replanAsk, [sheet, calendar, list], parts)));
  return router;
}
