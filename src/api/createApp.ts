// The service as an Express app: what is always so, the routes, and errors at the end. Listens to nothing by itself.
import express, { type Express, type RequestHandler } from 'express';
import helmet from 'helmet';
import { answerProblem } from './answerProblem.ts';
import { checks } from './checks.ts';
import { health } from './health.ts';
import { knownHost } from './knownHost.ts';
import type { ApiParts } from './parts.ts';
import { plans } from './plans.ts';
import { Problem } from './problem.ts';
import { WaitingLine } from './waitingLine.ts';

export type AppSettings = {
  readonly line?: WaitingLine;
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

function only(methods: string): RequestHandler {
  return (request) => {
    throw new Problem(405, `${request.method} means nothing here; ${methods} does.`, { headers: { Allow: methods } });
  };
}

const notHere: RequestHandler = () => {
  throw new Problem(404, 'There is nothing at this address.');
};

export function createApp(parts: ApiParts, settings: AppSettings = {}): Express {
  const line = settings.line ?? new WaitingLine();
  const app = express();
  app.disable('x-powered-by');
  app.disable('etag');
  app.set('query parser', 'simple');
  app.set('case sensitive routing', true);
  app.use(strict, keepNothing);
  if (settings.isOpenToAnyone !== true) app.use(knownHost);
  app.route('/healthz').get(health(parts.version, line)).all(only('GET, HEAD'));
  app
    .route('/v1/plans')
    .post(...plans(parts, line))
    .all(only('POST'));
  app
    .route('/v1/checks')
    .post(...checks(parts))
    .all(only('POST'));
  app.use(notHere);
  app.use(answerProblem(parts.report));
  return app;
}
