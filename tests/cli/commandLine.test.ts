// The command line as a request; help and usage errors on their streams.
import { expect, test } from 'vitest';
import { commandLine } from '../../src/cli/commandLine.ts';
import { surroundingsFor } from './fakes.ts';

function parse(text: string) {
  const streams = surroundingsFor();
  const result = commandLine(text === '' ? [] : text.split(' '), '1.2.3', streams);
  return { result, out: streams.out.text(), err: streams.err.text() };
}

test.each([
  ['plan day.yaml', { do: 'plan', file: 'day.yaml', json: false }],
  ['plan - --json', { do: 'plan', file: '-', json: true }],
  ['plan --out o day.yaml --svg s.svg', { do: 'plan', file: 'day.yaml', json: false, out: 'o', svg: 's.svg' }],
  ['plan d --seconds 0.5 --effort 10 --seed 0', { do: 'plan', file: 'd', json: false, seconds: 0.5, effort: 10, seed: 0 }],
  ['check day.yaml plan.json', { do: 'check', file: 'day.yaml', plan: 'plan.json', json: false }],
  ['check day.yaml - --json', { do: 'check', file: 'day.yaml', plan: '-', json: true }],
  ['draw plan.json', { do: 'draw', plan: 'plan.json' }],
  ['draw plan.json --out wall', { do: 'draw', plan: 'plan.json', out: 'wall' }],
])('%s', (text, request) => {
  const { result, out, err } = parse(text);
  expect(result).toEqual(request);
  expect(out + err).toBe('');
});

test.each([
  ['', 'Usage: ovenward'],
  ['plan', "missing required argument 'file'"],
  ['plan a b', 'too many arguments'],
  ['plna day.yaml', 'Did you mean plan?'],
  ['plan day.yaml --secnods 3', 'Did you mean --seconds?'],
  ['plan day.yaml --seconds', 'argument missing'],
  ['plan day.yaml --seconds 0', 'above 0'],
  ['plan day.yaml --seconds -1', 'above 0'],
  ['plan day.yaml --seconds soon', 'above 0'],
  ['plan day.yaml --seconds 86401', 'at most 86400'],
  ['plan day.yaml --effort 0', 'whole number from 1'],
  ['plan day.yaml --effort 1.5', 'whole number from 1'],
  ['plan day.yaml --seed -3', 'whole number from 0'],
  ['plan day.yaml --seed 2147483648', 'to 2147483647'],
  ['check day.yaml', "missing required argument 'plan'"],
  ['draw plan.json --json', 'unknown option'],
])('usage error: %s', (text, says) => {
  const { result, out, err } = parse(text);
  expect(result).toBe(2);
  expect(err).toContain(says);
  expect(out).toBe('');
});

test.each([
  ['plan day.yaml --seconds soon --effort 0 --seed -3', ['--seconds', '--effort', '--seed']],
  ['plan --seconds soon --workers 3', ['--seconds', '--workers', "missing required argument 'file'"]],
  ['plan day.yaml --effort 0 --secnods 3', ['--effort', 'Did you mean --seconds?']],
  ['compare day.yaml --seed -3 --sweep shelves', ['--seed', '--sweep']],
  ['fit day.yaml --add rye --add cheese-straw=0@07:30', ["'rye'", "'cheese-straw=0@07:30'"]],
])('everything that is wrong is told at once: %s', (text, says) => {
  const { result, out, err } = parse(text);
  expect(result).toBe(2);
  const lines = err.split('\n').filter((line) => line !== '' && !line.startsWith('(') && !line.startsWith('Did'));
  expect(lines).toHaveLength(says.length);
  says.forEach((part) => {
    expect(err).toContain(part);
  });
  expect(out).toBe('');
});

test.each(['--help', 'plan --help', 'check --help', 'draw --help'])(
  '%s goes to standard output, with examples and exit codes',
  (text) => {
    const { result, out, err } = parse(text);
    expect(result).toBe(0);
    expect(out).toContain('Examples:\n  ovenward ');
    expect(out).toContain('Exit codes: 0 ');
    expect(err).toBe('');
  },
);

test('--version', () => {
  expect(parse('--version')).toEqual({ result: 0, out: '1.2.3\n', err: '' });
});
