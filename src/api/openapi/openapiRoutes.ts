// /openapi.json and /docs. Mounted by createApp.ts.
import { Router } from 'express';
import type { ApiParts } from '../parts.ts';

export function openapiRoutes(_parts: ApiParts): Router {
  return Router();
}
