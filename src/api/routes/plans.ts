// /v1/plans: a scenario in, a plan out, as data, as pages of the sheet, as a calendar or as the list of what to do.
import { bodyText } from '../bodyText.ts';
import { bodyType } from '../mediaType.ts';
import type { ApiParts } from '../parts.ts';
import { planQuery } from '../planQuery.ts';
import { PLAN_FORMATS } from './planFormats.ts';
import type { WorkKindRoutes } from './workKindRoutes.ts';

const READS = ['application/json', 'application/yaml'] as const;

export function plans(parts: ApiParts): WorkKindRoutes {
  return {
    kind: 'plan',
    refuseEarly: (request) => {
      bodyType(request, READS);
      planQuery(request.query, parts.limits);
    },
    readAsk: async (request, asker) => {
      const limits = planQuery(request.query, parts.limits);
      const text = bodyText(request);
      const from = bodyType(request, READS) === 'application/json' ? 'JSON body' : 'YAML body';
      const ask = await parts.jobs.light('ask', { kind: 'plan', text, from, limits }, asker);
      return { ask: JSON.parse(ask), asked: text };
    },
    formats: PLAN_FORMATS,
  };
}
