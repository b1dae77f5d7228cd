// Routes of questions. Mounted by createApp.ts.
import { Router } from 'express';
import type { ApiParts } from '../parts.ts';

export function questionRoutes(_parts: ApiParts): Router {
  return Router();
}
