// /openapi.json and /docs: the document for programs and for people. Mounted by createApp.ts.
import { createHash } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import { wantedType } from '../mediaType.ts';
import { only } from '../only.ts';
import type { ApiParts } from '../parts.ts';
import { openapiDocument } from './openapiDocument.ts';
import { docsPage } from './page/docsPage.ts';
import { DOCS_STYLE } from './page/docsStyle.ts';

function hashed(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64');
}

/** One style sheet, known by its hash, and the empty icon; nothing else may load or run (CSP Level 3, section 2.3.1). */
const PAGE_POLICY = `default-src 'none'; style-src 'sha256-${hashed(DOCS_STYLE)}'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;

/** It changes only with the version of the program: kept an hour, then asked for again by its ETag. */
function send(request: Request, response: Response, type: 'application/json' | 'text/html', text: string): void {
  wantedType(request, [type]);
  response.set({ ETag: `"${hashed(text)}"`, 'Cache-Control': 'private, max-age=3600' });
  if (request.fresh) response.status(304).end();
  else response.type(type).send(text);
}

export function openapiRoutes({ version, limits }: ApiParts): Router {
  const document = openapiDocument(version, limits.mostSeconds);
  const [json, page] = [`${JSON.stringify(document, null, 1)}\n`, docsPage(document)];
  const routes = Router({ caseSensitive: true, strict: true });
  routes
    .route('/openapi.json')
    .get((request, response) => send(request, response, 'application/json', json))
    .all(only('GET, HEAD'));
  routes
    .route('/docs')
    .get((request, response) => {
      response.set('Content-Security-Policy', PAGE_POLICY);
      send(request, response, 'text/html', page);
    })
    .all(only('GET, HEAD'));
  return routes;
}
