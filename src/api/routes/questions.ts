// /v1/fits, /v1/comparisons and /v1/replans: questions that take more than one plan. Mounted by createApp.ts.
import { type Request, Router } from 'express';
import type { Comparison } from '../../model/comparison.ts';
import { bodyText } from '../bodyText.ts';
import type { Work, WorkLimits } from '../jobs/work.ts';
import { bodyType } from '../mediaType.ts';
import type { ApiParts } from '../parts.ts';
import { planQuery } from '../planQuery.ts';
import { Problem } from '../problem.ts';
import { PLAN_FORMATS, pageOf } from './planFormats.ts';
import type { WorkFormat } from './workFormat.ts';
import type { WorkKindRoutes } from './workKindRoutes.ts';
import { workRoutes } from './workRoutes.ts';

const READS = ['application/json'] as const;

/** Seconds when a request sets no limit: a question takes more than one plan. */
const USUAL_SECONDS = { fit: 3, comparison: 15, replan: 5 } as const;

type QuestionKind = keyof typeof USUAL_SECONDS;

function comparisonIn({ answer }: Work): Comparison {
  if (answer !== null && 'comparison' in answer) return answer;
  throw new Problem(404, 'There is no comparison yet.');
}

const curves: WorkFormat = {
  suffix: '.svg',
  mediaType: 'image/svg+xml',
  write: async (work, { jobs }, asker, number) =>
    pageOf(await jobs.light('curves', { comparison: JSON.stringify(comparisonIn(work)) }, asker), number),
};

function routesOf(kind: QuestionKind, formats: readonly WorkFormat[], parts: ApiParts): WorkKindRoutes {
  const limitsIn = ({ query }: Request): WorkLimits => planQuery(query, { ...parts.limits, usualSeconds: USUAL_SECONDS[kind] });
  return {
    kind,
    refuseEarly: (request) => {
      bodyType(request, READS);
      limitsIn(request);
    },
    readAsk: async (request, asker) => {
      const given = { kind, text: bodyText(request), limits: limitsIn(request) };
      const asked = await parts.jobs.light('ask', given, asker);
      return { ask: JSON.parse(asked), asked };
    },
    formats,
  };
}

export function questionRoutes(parts: ApiParts): Router {
  const router = Router({ caseSensitive: true });
  router.use('/fits', workRoutes(parts, routesOf('fit', [], parts)));
  router.use('/comparisons', workRoutes(parts, routesOf('comparison', [curves], parts)));
  router.use('/replans', workRoutes(parts, routesOf('replan', PLAN_FORMATS, parts)));
  return router;
}
