// Thousands of hostile requests to the program as people start it. Run by hand: npm run hostile, or npm run hostile -- COUNT SEED. Prints
// what was answered, what was wrong and what memory it took; ends with 1 when something was wrong.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { otherWork, siege } from './siege.ts';

const [count = 10_000, seed = 1] = process.argv.slice(2).map(Number);
const ROUND = 1_000;
const MB = 1024 * 1024;
const STOP_WITHIN_MS = 20_000;

const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
const options = ['--port', '0', '--store', join(folder, 'store.db'), '--requests-per-minute', '1000000', '--log-level', 'warn'];
const service = spawn(process.execPath, ['scripts/ovenward.mjs', 'serve', ...options], { stdio: ['ignore', 'pipe', 'pipe'] });
const ended = new Promise<number | null>((resolve) => service.once('exit', (code) => resolve(code)));
const said: string[] = [];
service.stderr.on('data', (chunk: Buffer) => said.push(chunk.toString('utf8')));

function listening(): Promise<string> {
  return new Promise((resolve, reject) => {
    let out = '';
    service.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString('utf8');
      const found = /http:\/\/[\d.]+:(\d+)/.exec(out);
      if (found !== null) resolve(found[0]);
    });
    service.once('exit', () => reject(new Error(`the service ended: ${said.join('')}`)));
  });
}

/** Resident memory of the service itself, in MB; Linux keeps it under /proc. */
async function memoryMb(url: string): Promise<number> {
  const text = await (await fetch(`${url}/metrics`)).text();
  return Number(/^process_resident_memory_bytes (\S+)$/m.exec(text)?.[1]) / MB;
}

function faultsSaid(): readonly string[] {
  return said
    .join('')
    .split('\n')
    .filter((line) => /"level":"error"|a fault of/i.test(line));
}

const url = await listening();
const port = Number(new URL(url).port);
const world = await otherWork(port);
const statuses = new Map<number, number>();
const types = new Map<string, number>();
const wrong: string[] = [];
const startedAtMs = performance.now();
console.log(`${count} hostile requests, seed ${seed}; ${(await memoryMb(url)).toFixed(0)} MB before`);
for (let sent = 0; sent < count; sent += ROUND) {
  const found = await siege(port, world, Math.min(ROUND, count - sent), seed + sent / ROUND);
  for (const [status, times] of found.statuses) statuses.set(status, (statuses.get(status) ?? 0) + times);
  for (const [type, times] of found.types) types.set(type, (types.get(type) ?? 0) + times);
  wrong.push(...found.wrong);
  const health = await fetch(`${url}/healthz`);
  if (health.status !== 200) wrong.push(`/healthz answers ${health.status}`);
  console.log(`${sent + ROUND}: ${found.wrong.length} wrong, ${(await memoryMb(url)).toFixed(0)} MB`);
}
service.kill('SIGTERM');
const late = setTimeout(() => service.kill('SIGKILL'), STOP_WITHIN_MS);
const code = await ended;
clearTimeout(late);
if (code !== 0) wrong.push(`the service ended with ${code}`);
wrong.push(...faultsSaid().map((line) => `the log: ${line.slice(0, 2000)}`));
rmSync(folder, { recursive: true });
const list = (counts: ReadonlyMap<string | number, number>): string =>
  [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, times]) => `${key}: ${times}`)
    .join(', ');
console.log(`${((performance.now() - startedAtMs) / 1000).toFixed(0)} s; statuses ${list(statuses)}; ${list(types)}`);
for (const line of wrong) console.log(`WRONG ${line}`);
console.log(wrong.length === 0 ? 'nothing wrong' : `${wrong.length} wrong`);
process.exitCode = wrong.length === 0 ? 0 : 1;
