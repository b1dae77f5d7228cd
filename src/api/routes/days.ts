// Routes of days. Mounted by createApp.ts.
import { Router } from 'express';
import type { ApiParts } from '../parts.ts';

export function dayRoutes(_parts: ApiParts): Router {
  return Router();
}
