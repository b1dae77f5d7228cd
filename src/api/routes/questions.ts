// /v1/fits, /v1/comparisons and /v1/replans: questions that take more than one plan. Mounted by createApp.ts.
import { type Request, Router } from 'express';
import type { Comparison } from '../../model/comparison.ts';
import { plainBody } from '../bodyValue.ts';
import type { Ask, Work, WorkLimits } from '../jobs/work.ts';
import { bodyType } from '../mediaType.ts';
import type { ApiParts } from '../parts.ts';
import { planQuery } from '../planQuery.ts';
import { Problem } from '../problem.ts';
import { comparisonAsk } from './comparisons.ts';
import { fitAsk } from './fits.ts';
import { PLAN_FORMATS, pageOf } from './planFormats.ts';
import { replanAsk } from './replans.ts';
import type { WorkFormat } from './workFormat.ts';
import type { WorkKindRoutes } from './workKindRoutes.ts';
import { workRoutes } from './workRoutes.ts';

const READS = ['application/json'] as const;

/** Seconds when a request sets no limit: a question takes more than one plan. */
const USUAL_SECONDS = { fit: 3, comparison: 15, replan: 5 } as const;

type QuestionKind = keyof typeof USUAL_SECONDS;
type ReadsAsk = (body: unknown, limits: WorkLimits, parts: ApiParts) => Ask;

function comparisonIn({ answer }: Work): Comparison {
  if (answer !== null && 'comparison' in answer) return answer;
  throw new Problem(404, 'There is no comparison yet.');
}

const curves: WorkFormat = {
  suffix: '.svg',
  mediaType: 'image/svg+xml',
  write: async (work, { jobs }, number) => pageOf(await jobs.draw('comparison', JSON.stringify(comparisonIn(work))), number),
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
  router.use('/replans', workRoutes(parts, routesOf('replan', replanAsk, PLAN_FORMATS, parts)));
  return router;
}
