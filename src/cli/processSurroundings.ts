// The real surroundings: this process's streams, signals and clock. Used by main.ts.
import { availableParallelism } from 'node:os';
import { instantNow, nowMs } from './clock.ts';
import { processStream } from './processStream.ts';
import { stopSignals } from './stopSignals.ts';
import type { Surroundings } from './surroundings.ts';

async function readStdin(): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks);
}

export function processSurroundings(startedAtMs: number): Surroundings {
  const err = processStream(process.stderr, process.env);
  return {
    out: processStream(process.stdout, process.env),
    err,
    readStdin,
    now: nowMs,
    instant: instantNow,
    startedAtMs,
    stoppable: stopSignals(nowMs, () => err.write('\nStopping: the best plan so far follows. Once more quits without it.\n')),
    pause: () => new Promise((resolve) => setImmediate(resolve)),
    processors: availableParallelism(),
    isDebugging: process.env.OVENWARD_DEBUG === '1',
    env: process.env,
  };
}
