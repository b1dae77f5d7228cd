// The smallest app on a free port, with a few handlers of the service and a last one that answers, for tests of one handler at a time.
import { createServer, request } from 'node:http';
import express, { type RequestHandler } from 'express';
import { onTestFinished } from 'vitest';
import { answerProblem } from '../../src/api/answerProblem.ts';
import type { Report } from '../../src/api/telling/report.ts';

export type SmallApp = { readonly url: string; readonly faults: readonly unknown[] };

/** `last` answers whatever gets through; by default 200 and "in". `report` too is told of faults of ours. */
export function smallApp(handlers: readonly RequestHandler[], last?: RequestHandler, report?: Report): Promise<SmallApp> {
  const faults: unknown[] = [];
  const app = express();
  const answers: RequestHandler = (_request, response) => {
    response.send('in');
  };
  app.use(...handlers, last ?? answers);
  app.use(
    answerProblem((fault, of) => {
      faults.push(fault);
      report?.(fault, of);
    }),
  );
  const server = createServer(app);
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      if (typeof address === 'object' && address !== null) resolve({ url: `http://127.0.0.1:${address.port}`, faults });
      else reject(new Error('no address'));
    });
  });
}

/** Status of a GET of this very path, which an URL would make plain before it is sent. */
export function askPath(url: string, path: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const sent = request(url, { path, agent: false }, (response) => {
      response.resume();
      response.on('end', () => resolve(response.statusCode ?? 0));
    });
    sent.on('error', reject);
    sent.end();
  });
}
