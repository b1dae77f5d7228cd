// One life of the service: `ovenward serve` on a free port of this machine, until it is killed or asked to stop. Used by manyRounds.ts.
import { type ChildProcess, spawn } from 'node:child_process';

export type ServiceLife = {
  readonly url: string;
  /** From when it was started until it answers, in milliseconds. */
  readonly startMs: number;
  /** SIGKILL; resolves when nothing of it is left. */
  readonly kill: () => Promise<void>;
  /** SIGTERM; resolves with its exit code. */
  readonly stop: () => Promise<number | null>;
  /** What it said on standard error, line by line. At this level of the log it says nothing as long as nothing is wrong. */
  readonly said: () => readonly string[];
};

const SETTINGS = {
  OVENWARD_PORT: '0',
  OVENWARD_LOG_LEVEL: 'warn',
  OVENWARD_REQUESTS_PER_MINUTE: '1000000',
  OVENWARD_PLACES: '10000',
};

const alive = new Set<ChildProcess>();
// Whoever ends early leaves none behind.
process.once('exit', () => {
  for (const child of alive) child.kill('SIGKILL');
});

type Started = {
  readonly child: ChildProcess;
  readonly ended: Promise<number | null>;
  readonly out: () => string;
  readonly said: () => readonly string[];
};

function started(program: string, store: string): Started {
  const env = { ...process.env, ...SETTINGS, OVENWARD_STORE: store };
  const child = spawn(process.execPath, [program, 'serve'], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  alive.add(child);
  const texts = { out: '', err: '' };
  child.stdout?.setEncoding('utf8').on('data', (text) => {
    texts.out += text;
  });
  child.stderr?.setEncoding('utf8').on('data', (text) => {
    texts.err += text;
  });
  const ended = new Promise<number | null>((done) => child.on('close', done));
  void ended.then(() => alive.delete(child));
  return { child, ended, out: () => texts.out, said: () => texts.err.split('\n').filter((line) => line !== '') };
}

export async function serviceLife(program: string, store: string): Promise<ServiceLife> {
  const startedAtMs = performance.now();
  const { child, ended, out, said } = started(program, store);
  const url = await new Promise<string>((found, failed) => {
    child.stdout?.on('data', () => {
      const address = /^Answering at (\S+)\. /.exec(out())?.[1];
      if (address !== undefined) found(address);
    });
    void ended.then((code) => failed(new Error(`The service did not start, exit code ${code}: ${said().join('\n')}`)));
  });
  return {
    url,
    startMs: performance.now() - startedAtMs,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    stop: () => {
      child.kill('SIGTERM');
      return ended;
    },
    said,
  };
}

/** A life that ends so many milliseconds after it was started, whether it answers by then or not. Returns what it said. */
export async function killedStarting(program: string, store: string, ms: number): Promise<readonly string[]> {
  const { child, ended, said } = started(program, store);
  const timer = setTimeout(() => child.kill('SIGKILL'), ms);
  const code = await ended;
  clearTimeout(timer);
  // Killed, it has no exit code.
  return code === null ? said() : [...said(), `it ended by itself with exit code ${code}`];
}
