// The load of many clients, from the process that makes it. Used by run/service.ts.
import { spawn } from 'node:child_process';
import { z } from 'zod';

export type Load = {
  readonly url: string;
  readonly path: string;
  readonly bodies: readonly string[];
  readonly clients: number;
  readonly seconds: number;
  /** Requests a second of each client at most; 0: as fast as answers come. */
  readonly perSecond: number;
  /** Seconds each request prefers to wait for its plan. */
  readonly wait: number;
};

const loadedSchema = z.strictObject({
  statuses: z.record(z.string(), z.int()),
  accepted: z.array(z.strictObject({ location: z.string(), body: z.int() })),
  /** Answers of 503 that do not say when to ask again. */
  refusedWithoutTime: z.int(),
  errors: z.int(),
  timeouts: z.int(),
  seconds: z.number(),
});

export type Loaded = z.infer<typeof loadedSchema>;

export async function startLoad(load: Load): Promise<Loaded> {
  const child = spawn(process.execPath, [`${import.meta.dirname}/load.mjs`], { stdio: ['pipe', 'pipe', 'inherit'] });
  let out = '';
  child.stdout.on('data', (text) => {
    out += text;
  });
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  child.stdin.end(JSON.stringify(load));
  const code = await ended;
  if (code !== 0) throw new Error(`the load ended with exit code ${code}`);
  return loadedSchema.parse(JSON.parse(out));
}
