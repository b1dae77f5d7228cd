// A signal that says the client went away before it had its answer. Used wherever an answer takes long.
import type { Response } from 'express';

export function goneSignal(response: Response): AbortSignal {
  const gone = new AbortController();
  // Listening from now on would miss a client that left while its body was being read.
  if (response.destroyed || response.closed) gone.abort();
  response.once('close', () => {
    if (!response.writableEnded) gone.abort();
  });
  return gone.signal;
}

/** Thrown where work is given up since its client went away: there is nobody to be told. */
export class ClientGone extends Error {
  constructor() {
    super('The client went away');
    this.name = 'ClientGone';
  }
}
