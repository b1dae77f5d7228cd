// GET /{id}/events: a piece of work as it goes on, as server-sent events (WHATWG HTML, section 9.2). Used by workRoutes.ts.
import type { RequestHandler, Response } from 'express';
import type { Work } from '../jobs/work.ts';
import { wantedType } from '../mediaType.ts';
import type { ApiParts } from '../parts.ts';
import { hasEnded } from './sendWork.ts';

const USUAL_HEARTBEAT_MS = 15_000;

/** Milliseconds after which a browser that lost the stream connects again. */
const RETRY_MS = 2_000;

/** Id of the last event. Browsers connect again to a stream that ended; whoever shows this id is told to stop (204, section 9.2.3). */
const LAST_ID = 'end';

type EventName = 'state' | 'progress' | 'done';

class EventStream {
  readonly #response: Response;
  readonly #isClosing: () => boolean;
  #number: number;
  #before: Work | null = null;
  isOver = false;

  constructor(response: Response, lastId: string | undefined, isClosing: () => boolean) {
    this.#response = response;
    this.#isClosing = isClosing;
    // Ids go on rising over a reconnection.
    this.#number = lastId !== undefined && /^\d{1,9}$/.test(lastId) ? Number(lastId) : 0;
  }

  /** Tells what is new since it was last called; all there is the first time. */
  tell(work: Work): void {
    if (this.isOver) return;
    const before = this.#before;
    this.#before = work;
    const { id, kind, state, askedAt, endedAt, ahead, failure } = work;
    const standing = { id, kind, state, askedAt, endedAt, ahead, failure };
    if (hasEnded(work)) {
      this.#send('done', standing, LAST_ID);
      this.end();
      return;
    }
    if (before === null || before.state !== state || before.ahead !== ahead) this.#send('state', standing);
    // Whoever reads slowly gets the next news instead: they are about the whole search.
    const isNew = work.news !== null && work.news !== before?.news;
    if (isNew && !this.#response.writableNeedDrain) this.#send('progress', work.news);
    // It goes on when the service is there again, and so may whoever reads.
    if (this.#isClosing() && state === 'waiting') this.end();
  }

  end(): void {
    this.isOver = true;
    this.#response.end();
  }

  #send(name: EventName, data: unknown, id = String(++this.#number)): void {
    this.#response.write(`event: ${name}\nid: ${id}\ndata: ${JSON.stringify(data)}\n\n`);
  }
}

function open(response: Response): void {
  // A proxy in between is asked not to collect what is meant to arrive at once.
  response.status(200).set({ 'Content-Type': 'text/event-stream', 'X-Accel-Buffering': 'no' });
  response.flushHeaders();
}

/** `find`: the work of the request, or a Problem. */
export function workEvents(parts: ApiParts, find: (name: string) => Promise<Work>): RequestHandler<{ id: string }> {
  const { jobs, heartbeatMs = USUAL_HEARTBEAT_MS } = parts;
  return async (request, response) => {
    wantedType(request, ['text/event-stream']);
    const work = await find(request.params.id);
    if (hasEnded(work) && request.headers['last-event-id'] === LAST_ID) {
      response.status(204).end();
      return;
    }
    open(response);
    if (request.method === 'HEAD') {
      response.end();
      return;
    }
    response.write(`retry: ${RETRY_MS}\n\n`);
    const lastId = request.headers['last-event-id'];
    const stream = new EventStream(response, typeof lastId === 'string' ? lastId : undefined, () => jobs.isClosing);
    const beat = setInterval(() => response.write(': still here\n\n'), heartbeatMs);
    const leave = jobs.follow(work.id, (told) => stream.tell(told));
    response.once('close', () => {
      clearInterval(beat);
      leave();
    });
  };
}
