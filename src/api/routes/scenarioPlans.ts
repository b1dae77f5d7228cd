// POST /v1/scenarios/{name}/plans: a plan of the last revision of a kept scenario, made as every plan is.
import { type Request, type RequestHandler, Router } from 'express';
import type { ScenarioRecord } from '../../store/store.ts';
import { only } from '../only.ts';
import type { ApiParts } from '../parts.ts';
import { planQuery } from '../planQuery.ts';
import { Problem } from '../problem.ts';
import { askWork } from './askWork.ts';
import { scenarioNameIn } from './pathParts.ts';
import { plans } from './plans.ts';

export function scenarioPlans(parts: ApiParts): Router {
  const found = new WeakMap<Request, ScenarioRecord>();
  const find: RequestHandler = async (request, _response, next) => {
    const name = scenarioNameIn(request);
    const record = await parts.store.scenario(name);
    if (record === null) throw new Problem(404, `There is no scenario ${name}.`);
    found.set(request, record);
    next();
  };
  const work = askWork(parts, {
    ...plans(parts),
    refuseEarly: (request) => {
      planQuery(request.query, parts.limits);
    },
    readAsk: async (request, asker) => {
      const record = found.get(request);
      if (record === undefined) throw new RangeError('a plan of no scenario was asked for');
      // Asked again with the same key it is the same work, also when the scenario has changed meanwhile.
      const limits = planQuery(request.query, parts.limits);
      const ask = await parts.jobs.light('ask', { kind: 'plan', text: record.text, from: 'kept scenario', limits }, asker);
      return { ask: JSON.parse(ask), asked: '' };
    },
  });
  const router = Router({ caseSensitive: true, mergeParams: true });
  router
    .route('/')
    .post(find, ...work)
    .all(only('POST'));
  return router;
}
