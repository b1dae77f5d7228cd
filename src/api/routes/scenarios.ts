// Routes of scenarios. Mounted by createApp.ts.
import { Router } from 'express';
import type { ApiParts } from '../parts.ts';

export function scenarioRoutes(_parts: ApiParts): Router {
  return Router();
}
