// One life of the writer: started on a file, killed at a given moment, and what it told until then.
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import type { Doing, Told } from './acknowledgement.ts';

const root = resolve(import.meta.dirname, '../../..');
const writer = resolve(import.meta.dirname, 'writer.ts');

export type Life = {
  readonly file: string;
  /** The number of its first writing. */
  readonly from: number;
  readonly checkpointPages: number;
  /** From when it begins to open the store until it is killed. */
  readonly ms: number;
};

export type Death = {
  readonly told: readonly Told[];
  /** What it was doing; null when it was between two things. */
  readonly during: Doing | null;
};

export function killedAfter({ file, from, checkpointPages, ms }: Life): Promise<Death> {
  return new Promise((done, failed) => {
    const words = ['--import', 'tsx', writer, file, String(from), String(checkpointPages)];
    const child = spawn(process.execPath, words, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    let err = '';
    let isTimed = false;
    child.stdout.on('data', (text) => {
      out += text;
      if (isTimed) return;
      isTimed = true;
      setTimeout(() => child.kill('SIGKILL'), ms);
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    child.on('error', failed);
    child.on('close', (_, signal) => {
      if (signal !== 'SIGKILL') return failed(new Error(`The writer ended by itself: ${err}`));
      // A line that was cut was not told.
      const told = out
        .split('\n')
        .slice(0, -1)
        .map((line): Told => JSON.parse(line));
      const last = told.at(-1);
      done({ told, during: last !== undefined && 'doing' in last ? last.doing : null });
    });
  });
}
