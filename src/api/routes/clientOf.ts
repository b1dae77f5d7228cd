// Whose request it is, for fair turns. Used by askWork.ts.
import type { Request } from 'express';
import { isLoopback } from '../loopback.ts';

/** An address; on this machine, where all have the same, the program, as far as it says. */
export function clientOf({ socket, headers }: Request): string {
  const address = socket.remoteAddress ?? '';
  return isLoopback(address) ? `${address} ${(headers['user-agent'] ?? '').slice(0, 100)}` : address;
}
