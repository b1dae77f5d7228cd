// `ovenward serve` as people start it: words on the command line, what it prints, how it stops.
import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { join, resolve } from 'node:path';
import { afterEach, beforeAll, expect, onTestFinished, test } from 'vitest';
import { build } from '../../scripts/build.mjs';
import { judge } from '../../src/check/judge.ts';
import { commandLine } from '../../src/cli/commandLine.ts';
import { planSchema } from '../../src/model/plan.ts';
import { surroundingsFor } from '../cli/fakes.ts';
import { scenarioNamed, scenarioText } from '../scenarios/allScenarios.ts';
import { ask, askYaml, until, WAIT } from './running.ts';

const root = resolve(import.meta.dirname, '../..');
let child: ChildProcess | undefined;
beforeAll(() => {
  build();
});
afterEach(() => {
  child?.kill('SIGKILL');
  child = undefined;
});

type Ended = { readonly code: number | null; readonly signal: NodeJS.Signals | null };

async function serve(...words: string[]) {
  const process_ = spawn(process.execPath, [join(root, 'scripts/ovenward.mjs'), 'serve', ...words], { cwd: root });
  child = process_;
  const said = { out: '', err: '' };
  process_.stdout.on('data', (text) => {
    said.out += text;
  });
  process_.stderr.on('data', (text) => {
    said.err += text;
  });
  let isOver = false;
  const ended = new Promise<Ended>((done) =>
    process_.on('close', (code, signal) => {
      isOver = true;
      done({ code, signal });
    }),
  );
  await until(() => isOver || said.out.includes('\n'));
  const url = /^Answering at (\S+)\. /.exec(said.out)?.[1] ?? '';
  return { process_, said, ended, url };
}

test.each<NodeJS.Signals>(['SIGTERM', 'SIGINT'])('%s stops it with exit code 0', async (signal) => {
  const { process_, said, ended, url } = await serve('--port', '0');
  expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  expect((await ask(`${url}/healthz`)).status).toBe(200);
  process_.kill(signal);
  expect(await ended).toEqual({ code: 0, signal: null });
  expect(said.err).toContain('Stopping: ');
});

test('stopped while it searches, it sends the best plan so far, and that plan keeps every rule', async () => {
  const { process_, ended, url } = await serve('--port', '0');
  const answer = askYaml(`${url}/v1/plans?seconds=30`, scenarioText('three-deliveries'), WAIT);
  await until(async () => JSON.parse((await ask(`${url}/healthz`)).text).running === 1);
  await new Promise((later) => setTimeout(later, 1000));
  const startedAt = performance.now();
  process_.kill('SIGTERM');
  const { status, text } = await answer;
  expect(status).toBe(200);
  const plan = planSchema.parse(JSON.parse(text).answer);
  expect(plan.stopped).toBe('cancelled');
  expect(judge(scenarioNamed('three-deliveries'), plan).breaches).toEqual([]);
  expect(await ended).toEqual({ code: 0, signal: null });
  expect(performance.now() - startedAt).toBeLessThan(8000);
});

test('a port that is taken: exit code 2, and what to do', async () => {
  const taken = createServer();
  await new Promise<void>((done) => taken.listen(0, '127.0.0.1', done));
  onTestFinished(() => {
    taken.close();
  });
  const address = taken.address();
  const port = typeof address === 'object' ? String(address?.port) : '';
  const { said, ended } = await serve('--port', port);
  expect((await ended).code).toBe(2);
  expect(said.out).toBe('');
  expect(said.err).toBe(
    `127.0.0.1:${port}  PORT_REFUSED  another program listens there / choose another --port or --host, or stop the other program\n`,
  );
});

function parse(text: string) {
  const streams = surroundingsFor();
  return { result: commandLine(text.split(' '), '1.2.3', streams), err: streams.err.text() };
}

test.each([
  ['serve --port', 'argument missing'],
  ['serve day.yaml', 'too many arguments'],
])('usage error: %s', (text, says) => {
  const { result, err } = parse(text);
  expect(result).toBe(2);
  expect(err).toContain(says);
});
