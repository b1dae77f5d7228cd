// In which format a client wants what comes out of work. Used by askWork.ts and workRoutes.ts.
import type { Request } from 'express';
import { wantedType } from '../mediaType.ts';
import type { WorkFormat } from './workFormat.ts';

export const JSON_TYPE = 'application/json';

/** The format wanted beside JSON; undefined for JSON. 406 for what is not made here. */
export function wantedFormat(request: Request, formats: readonly WorkFormat[]): WorkFormat | undefined {
  const type = wantedType<string>(request, [JSON_TYPE, ...formats.map(({ mediaType }) => mediaType)]);
  return formats.find(({ mediaType }) => mediaType === type);
}
