// Output streams: closed pipes are quiet, full disks are not, colours only where they are wanted; the progress line.
import { Writable } from 'node:stream';
import { expect, test } from 'vitest';
import { processStream } from '../../src/cli/processStream.ts';
import { progressLine } from '../../src/cli/progressLine.ts';
import { hearing } from './fakes.ts';

function failing(code: string): Writable {
  return new Writable({
    write: (_, __, done) => done(Object.assign(new Error(code), { code })),
  });
}

test('a pipe that was closed is no failure; a disk that is full is one', async () => {
  const closed = processStream(failing('EPIPE'), {});
  closed.write('a');
  closed.write('b');
  expect(await closed.settled()).toBe(true);
  const full = processStream(failing('ENOSPC'), {});
  full.write('a');
  expect(await full.settled()).toBe(false);
});

test('everything written has left before it settles', async () => {
  const texts: string[] = [];
  const slow = new Writable({
    highWaterMark: 1,
    write: (chunk, _, done) => {
      setTimeout(() => {
        texts.push(String(chunk));
        done();
      }, 5);
    },
  });
  const stream = processStream(slow, {});
  for (const text of ['a', 'b', 'c']) stream.write(text);
  expect(await stream.settled()).toBe(true);
  expect(texts.join('')).toBe('abc');
});

test.each([
  [true, {}, true],
  [true, { NO_COLOR: '1' }, false],
  [true, { NO_COLOR: '' }, true],
  [true, { TERM: 'dumb' }, false],
  [false, {}, false],
  [false, { FORCE_COLOR: '1' }, true],
  [true, { FORCE_COLOR: '0' }, false],
  [false, { FORCE_COLOR: '1', NO_COLOR: '1' }, false],
])('colours: terminal %s, environment %o: %s', (isTTY, env, hasColours) => {
  const output = Object.assign(new Writable({ write: (_, __, done) => done() }), { isTTY });
  expect(processStream(output, env).hasColours).toBe(hasColours);
});

const progress = {
  seconds: 1.23,
  cost: 512.4,
  lowerBound: 500,
  gap: 0.02,
  plannedTrays: 24,
  trays: 26,
  rounds: 9,
  changed: 'less late',
};

test('progress is drawn on a terminal ten times a second at most, and wiped', () => {
  const err = hearing({ isTerminal: true });
  let now = 0;
  const line = progressLine(err, () => now);
  line.show(progress);
  now = 50;
  line.show(progress);
  now = 100;
  line.show({ ...progress, lowerBound: 0 });
  line.wipe();
  line.wipe();
  expect(err.text().split('\r\u001b[K')).toEqual([
    '',
    'planning 1.2 s: 24 of 26 trays, price 512, at most 2.5 % from the best possible; less late (Ctrl-C takes it)',
    'planning 1.2 s: 24 of 26 trays, price 512; less late (Ctrl-C takes it)',
    '',
  ]);
});

test('progress is silent where there is no terminal', () => {
  const err = hearing();
  const line = progressLine(err, () => 0);
  line.show(progress);
  line.wipe();
  expect(err.text()).toBe('');
});
