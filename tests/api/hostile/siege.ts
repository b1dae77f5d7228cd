// Sends hostile requests, a few at a time, and collects what is wrong with the answers. Used by the suite and by run.ts.
import fc from 'fast-check';
import { uncivil } from './civil.ts';
import { hostileRequest, type World } from './hostileRequests.ts';
import { scenarioCalled } from './namedScenario.ts';
import { type RawAnswer, type RawRequest, rawBytes, sendRaw } from './rawRequest.ts';

export type Siege = {
  /** How many answers of each status; 0 for connections that ended without one. */
  readonly statuses: ReadonlyMap<number, number>;
  /** How many answers of each media type. */
  readonly types: ReadonlyMap<string, number>;
  /** One line for each thing that was wrong. */
  readonly wrong: readonly string[];
};

/** So many are on their way at once. */
const AT_ONCE = 12;

/** Work somebody else asked for, whose ids are then looked at, stopped and mixed up. */
export async function otherWork(port: number): Promise<World> {
  const body = JSON.stringify(scenarioCalled('Somebody else', 'Bun', 'One'));
  const headers = [
    ['Host', 'localhost'],
    ['Connection', 'close'],
    ['Content-Type', 'application/json'],
    ['Content-Length', String(Buffer.byteLength(body))],
  ] as const;
  const bytes = rawBytes('POST', '/v1/plans?effort=1', headers, body);
  const { status, text } = await sendRaw(port, { what: 'work of others', bytes });
  const work: unknown = JSON.parse(text);
  const id = typeof work === 'object' && work !== null && 'id' in work ? work.id : undefined;
  if (status !== 202 || typeof id !== 'string') throw new Error(`no work to begin with: ${status} ${text}`);
  return { ids: [id] };
}

function count<T>(counts: Map<T, number>, key: T): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

/** Answers in the order of the requests: later ones do not wait for those before. */
async function sendAll(port: number, requests: readonly RawRequest[], told: (at: number, answer: RawAnswer) => void) {
  let next = 0;
  const sender = async (): Promise<void> => {
    for (;;) {
      const at = next++;
      const request = requests[at];
      if (request === undefined) return;
      told(at, await sendRaw(port, request));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, sender));
}

export async function siege(port: number, world: World, times: number, seed: number): Promise<Siege> {
  const requests = fc.sample(hostileRequest(world), { numRuns: times, seed });
  const statuses = new Map<number, number>();
  const types = new Map<string, number>();
  const wrong: string[] = [];
  await sendAll(port, requests, (at, answer) => {
    const request = requests[at];
    if (request === undefined) return;
    count(statuses, answer.status);
    count(types, (answer.headers['content-type'] ?? 'none').split(';')[0] ?? '');
    for (const fault of uncivil(request, answer)) wrong.push(`${fault}: request ${at} of seed ${seed}, ${request.what}`);
  });
  return { statuses, types, wrong };
}
