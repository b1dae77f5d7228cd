// A benchmark that did not come to its end says so and ends with a code other than 0.
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { endOf } from '../../benchmarks/endOf.mjs';

const root = resolve(import.meta.dirname, '../..');

/** As start.mjs runs a benchmark. */
function ran(code: string): ReturnType<typeof endOf> {
  const typescript = `data:text/javascript,${encodeURIComponent(code)}`;
  const words = ['--import', 'tsx', '--input-type=module', '-e', `await import(${JSON.stringify(typescript)})`];
  return endOf(spawnSync(process.execPath, words, { cwd: root, stdio: ['ignore', 'ignore', 'pipe'] }));
}

test.each([
  ['to its end', 'console.log("the sum")', 0, null],
  ['with a verdict', 'process.exit(1)', 1, null],
  ['with an error', 'throw new Error("no")', 1, null],
  ['waiting for what never comes', 'await new Promise(() => {})', 13, expect.stringContaining('in its midst')],
  ['by a signal', 'process.kill(process.pid, "SIGKILL"); await new Promise(() => {})', 1, expect.stringContaining('by SIGKILL')],
])('%s', (_, code, expected, says) => {
  expect(ran(code)).toEqual({ code: expected, says });
});

test('a program that is not there', () => {
  const end = endOf(spawnSync(join(root, 'no-such-program')));
  expect(end).toEqual({ code: 1, says: expect.stringContaining('could not be started') });
});

test.each([
  ['--count', '0'],
  ['--count', 'some'],
  ['--seconds', '0'],
])('nothing is measured of %s %s', (...words) => {
  const { status, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'benchmarks/run/upsets.ts', ...words], {
    cwd: root,
    encoding: 'utf8',
  });
  expect({ status, stderr }).toEqual({ status: 1, stderr: expect.stringContaining('take numbers above 0') });
});
