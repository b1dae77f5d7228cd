// The service as an Express app: what is always so, the routes, and errors at the end. Listens to nothing by itself.
import express, { type Express, type RequestHandler } from 'express';
import helmet from 'helmet';
import { answerProblem } from './answerProblem.ts';
import { BODY_TURNS, MOST_BODY_BYTES } from './bodyText.ts';
import { checks } from './checks.ts';
import { health } from './health.ts';
import { knownHost } from './knownHost.ts';
import { only } from './only.ts';
import { openapiRoutes } from './openapi/openapiRoutes.ts';
import type { ApiParts } from './parts.ts';
import { Problem } from './problem.ts';
import { readiness } from './readiness.ts';
import { dayRoutes } from './routes/days.ts';
import { metricsRoute } from './routes/metricsRoute.ts';
import { plans } from './routes/plans.ts';
import { questionRoutes } from './routes/questions.ts';
import { scenarioRoutes } from './routes/scenarios.ts';
import { workRoutes } from './routes/workRoutes.ts';
import { onlyWithToken } from './safety/onlyWithToken.ts';
import { rates } from './safety/rates.ts';
import { requestLog } from './telling/requestLog.ts';
import { WATCHED } from './telling/routeName.ts';
import { Turns } from './turns.ts';

export type AppSettings = {
  /** Whether requests may name any host. Default: only those of this machine. */
  readonly isOpenToAnyone?: boolean;
};

/** Answers are data: nothing in them may run, load, be framed or be kept. */
const strict = helmet({
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'none'"],
      frameAncestors: ["'none'"],
      sandbox: [],
    },
  },
  xFrameOptions: { action: 'deny' },
  // The service speaks plain HTTP; a promise of HTTPS would be an empty one.
  strictTransportSecurity: false,
});

const keepNothing: RequestHandler = (_request, response, next) => {
  response.set('Cache-Control', 'no-store');
  next();
};

/** Who watches the service hears from it at once. */
function inTurn(turns: Turns): RequestHandler {
  return ({ path }, _response, next) => {
    if (WATCHED.has(path)) next();
    else turns.take(next);
  };
}

const notHere: RequestHandler = () => {
  throw new Problem(404, 'There is nothing at this address.');
};

/** Who may ask: whoever shows the token, where one is set; else, unless it is open to anyone, whoever names this machine. */
function admit({ token }: ApiParts, isOpenToAnyone: boolean): readonly RequestHandler[] {
  if (token !== null) return [onlyWithToken(token)];
  return isOpenToAnyone ? [] : [knownHost];
}

function mountRoutes(app: Express, parts: ApiParts): void {
  app.route('/healthz').get(health(parts)).all(only('GET, HEAD'));
  app.route('/readyz').get(readiness(parts)).all(only('GET, HEAD'));
  app.route('/metrics').get(metricsRoute(parts.metrics, parts.jobs)).all(only('GET, HEAD'));
  app.use(openapiRoutes(parts));
  app.use('/v1/scenarios', scenarioRoutes(parts));
  app.use('/v1/plans', workRoutes(parts, plans(parts)));
  app
    .route('/v1/checks')
    .post(...checks(parts))
    .all(only('POST'));
  app.use('/v1', questionRoutes(parts));
  app.use('/v1/days', dayRoutes(parts));
}

export function createApp(parts: ApiParts, settings: AppSettings = {}): Express {
  const app = express();
  app.disable('x-powered-by');
  app.disable('etag');
  app.set('query parser', 'simple');
  app.set('case sensitive routing', true);
  app.set(MOST_BODY_BYTES, parts.limits.bodyKb * 1000);
  const turns = new Turns(parts.now);
  app.set(BODY_TURNS, turns);
  app.use(requestLog(parts.log), parts.metrics.observe, inTurn(turns), strict, keepNothing);
  // Counted before they are let in, so that nobody tries tokens by the thousand.
  app.use(rates(parts.limits.requestsPerMinute), ...admit(parts, settings.isOpenToAnyone === true));
  mountRoutes(app, parts);
  app.use(notHere);
  app.use(answerProblem(parts.report));
  return app;
}
