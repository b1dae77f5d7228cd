// The built service on a free port with a store of its own, and looks at it from outside. Used by run/service.ts.
import { spawn } from 'node:child_process';
import { mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';

export type MeasuredService = {
  readonly url: string;
  /** Memory its process holds, in MB. */
  readonly residentMb: () => number;
  /** 99th percentile of the delay of its event loop since the last look, in ms. */
  readonly loopDelayMs: () => Promise<number>;
  readonly stop: () => Promise<number | null>;
  /** What it logged. */
  readonly log: () => string;
};

const SETTINGS = { OVENWARD_REQUESTS_PER_MINUTE: '1000000', OVENWARD_LOG_LEVEL: 'warn', OVENWARD_PORT: '0' };
const LAG = /^nodejs_eventloop_lag_p99_seconds (\S+)$/m;

function urlIn(out: Readable | null): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    if (out === null) throw new Error('the service has no standard output');
    out.on('data', (more) => {
      text += more;
      const url = /^Answering at (\S+)\. /.exec(text)?.[1];
      if (url !== undefined) resolve(url);
    });
    out.on('close', () => reject(new Error(`the service did not start: ${text}`)));
  });
}

export async function startService(): Promise<MeasuredService> {
  const folder = mkdtempSync(join(tmpdir(), 'ovenward-bench-'));
  const log = join(folder, 'log');
  const env = { ...process.env, ...SETTINGS, OVENWARD_STORE: join(folder, 'bench.db') };
  const child = spawn(process.execPath, [`${import.meta.dirname}/serveBuilt.mjs`, 'serve'], {
    env,
    stdio: ['ignore', 'pipe', openSync(log, 'w')],
  });
  // A benchmark that fails does not leave it behind.
  process.once('exit', () => child.kill('SIGKILL'));
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  const url = await urlIn(child.stdout);
  return {
    url,
    residentMb: () => Number(/^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))?.[1]) / 1024,
    loopDelayMs: async () => 1000 * Number(LAG.exec(await (await fetch(`${url}/metrics`)).text())?.[1]),
    log: () => readFileSync(log, 'utf8'),
    stop: async () => {
      child.kill('SIGTERM');
      const code = await ended;
      rmSync(folder, { recursive: true });
      return code;
    },
  };
}
