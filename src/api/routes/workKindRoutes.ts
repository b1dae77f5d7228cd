// What the routes of one kind of work need to know of it. Handed to workRoutes.ts.
import type { Request } from 'express';
import type { Ask } from '../jobs/work.ts';
import type { Asker } from '../light/lightLine.ts';
import type { WorkFormat } from './workFormat.ts';

export type WorkKindRoutes = {
  readonly kind: Ask['kind'];
  /** Throws what can be refused before the body is read: media types, the query. */
  readonly refuseEarly?: (request: Request) => void;
  /** Reads the body, which is there as bytes (bodyText.ts), or throws a Problem. `asked`: the request as text. */
  readonly readAsk: (request: Request, asker: Asker) => Promise<{ readonly ask: Ask; readonly asked: string }>;
  /** Beside JSON. */
  readonly formats: readonly WorkFormat[];
};
