// An id for every request, which nobody can guess and no two share. Used by the log of requests.
import { randomUUID } from 'node:crypto';

export function requestId(): string {
  return randomUUID();
}
