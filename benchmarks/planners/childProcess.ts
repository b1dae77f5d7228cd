// Runs a planner in a process of its own and measures the whole process, from its start to its end.
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';

export const root = resolve(import.meta.dirname, '../..');

/** Seconds a child may take beyond its limit before it counts as hung. */
const GRACE_SECONDS = 90;

export type ChildRun = { readonly output: string; readonly wallSeconds: number };

/** Runs node with the words given. Throws when the process fails or does not end. */
export function runNode(words: readonly string[], limitSeconds: number): Promise<ChildRun> {
  return new Promise((settle, fail) => {
    const startedAt = performance.now();
    const child = spawn(process.execPath, words, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
    const output: Buffer[] = [];
    const errors: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => output.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => errors.push(chunk));
    const timer = setTimeout(() => child.kill('SIGKILL'), (limitSeconds + GRACE_SECONDS) * 1000);
    child.on('error', fail);
    child.on('close', (code, signal) => {
      clearTimeout(timer);
      const wallSeconds = (performance.now() - startedAt) / 1000;
      if (code === 0) settle({ output: Buffer.concat(output).toString('utf8'), wallSeconds });
      else fail(new Error(`${words.join(' ')} ended with ${signal ?? code}\n${Buffer.concat(errors).toString('utf8')}`));
    });
  });
}
