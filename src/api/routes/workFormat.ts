// How an answer of finished work is written for those who do not read JSON: by suffix of the address and by Accept. Used by workRoutes.ts.
import type { Work } from '../jobs/work.ts';
import type { Asker } from '../light/lightLine.ts';
import type { ApiParts } from '../parts.ts';

export type WorkFormat = {
  /** With its dot: ".svg". */
  readonly suffix: string;
  readonly mediaType: string;
  /** The text, of work whose `answer` is there. `page` counts from 1; a Problem 404 when there is no such page. */
  readonly write: (work: Work, parts: ApiParts, asker: Asker, page: number) => Promise<string>;
};
