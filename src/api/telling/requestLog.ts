// A line in the log for every request that was answered or given up: which, what came of it, how long it took. Never a body, a token, the
// values of a query or a name somebody gave. First in createApp.ts, so that everything behind it can say which request it was.
import type { Request, RequestHandler, Response } from 'express';
import type { LevelWithSilent, Logger } from 'pino';
import { pinoHttp } from 'pino-http';
import { requestId } from './requestId.ts';
import { routeName, WATCHED } from './routeName.ts';

/** What a client may call its request: short, and harmless wherever it is written. */
const SAFE_NAME = /^[\w.-]{1,64}$/;

function nameGiven({ headers }: Request): string | undefined {
  const name = headers['x-request-id'];
  return typeof name === 'string' && SAFE_NAME.test(name) ? name : undefined;
}

function levelOf(status: number, route: string): LevelWithSilent {
  const isWatched = WATCHED.has(route);
  // Turned away while the line is full: nothing is wrong, and when it happens it happens by the thousand. Metrics count it.
  if (status === 503 && !isWatched) return 'info';
  if (status >= 400) return 'warn';
  return isWatched ? 'debug' : 'info';
}

function whichOf(request: Request) {
  return routeName(request.originalUrl.split('?')[0] ?? '');
}

function toldOf(request: Request, { statusCode }: Response) {
  const called = nameGiven(request);
  return { ...(called === undefined ? {} : { called }), method: request.method, ...whichOf(request), status: statusCode };
}

function saidOf(_request: Request, { writableFinished }: Response): string {
  return writableFinished ? 'answered' : 'given up';
}

/**
 * Gives the request an `id` of ours, told in the log and as `instance` of a problem, and answers X-Request-Id: what the client called its
 * request, when that is a short word, else that id.
 */
export function requestLog(log: Logger): RequestHandler {
  const told = pinoHttp<Request, Response>({
    logger: log,
    genReqId: requestId,
    quietReqLogger: true,
    quietResLogger: true,
    customAttributeKeys: { reqId: 'id', responseTime: 'ms' },
    // Request and answer as a whole are not for the log; what may be told is in customProps.
    wrapSerializers: false,
    serializers: { req: () => undefined, res: () => undefined },
    customProps: toldOf,
    customLogLevel: (request, { statusCode }) => levelOf(statusCode, whichOf(request).route),
    customSuccessMessage: saidOf,
    // A fault of ours has a line of its own, of report.ts. The one the package makes up for a status has a stack that leads nowhere.
    customErrorMessage: saidOf,
    customErrorObject: (_request, _response, _fault, { ms }) => ({ ms }),
  });
  return (request, response, next) => {
    told(request, response);
    response.set('X-Request-Id', nameGiven(request) ?? String(request.id));
    next();
  };
}
