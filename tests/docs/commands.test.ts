// docs/commands.md says what --help says: the same commands, the same options in the same words, every code of the command.
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { commandLine } from '../../src/cli/commandLine.ts';
import { SERVE_SETTINGS } from '../../src/cli/settings/serveSettings.ts';
import { surroundingsFor } from '../cli/fakes.ts';

const root = resolve(import.meta.dirname, '../..');
const page = readFileSync(join(root, 'docs/commands.md'), 'utf8');

function help(...words: string[]): string {
  const streams = surroundingsFor();
  commandLine([...words, '--help'], '0', streams);
  return streams.out.text();
}

/** The entries of one part of a help text: the term, and its description on one line. */
function entries(text: string, part: string): readonly (readonly [string, string])[] {
  const lines = text.split(`\n${part}:\n`)[1]?.split('\n\n')[0]?.split('\n') ?? [];
  const whole: string[] = [];
  for (const line of lines) {
    if (/^ {2}\S/.test(line)) whole.push(line.trim());
    else whole.push(`${whole.pop()} ${line.trim()}`);
  }
  return whole.map((line) => {
    const [term = '', says = ''] = line.split(/ {2,}/);
    return [term, says];
  });
}

const commands = entries(help(), 'Commands').map(([term]) => term.split(' ')[0] ?? '');

test('the commands of --help are the ones with a section', () => {
  const headings = [...page.matchAll(/^## (\w+)$/gm)].map(([, heading]) => heading);
  expect(commands).toEqual(['plan', 'replan', 'check', 'why', 'fit', 'compare', 'draw', 'serve', 'post', 'backup']);
  expect(headings.slice(0, commands.length)).toEqual(commands);
});

test.each(commands)('%s: options and their words agree', (command) => {
  const section = page.split(`\n## ${command}\n`)[1]?.split('\n## ')[0] ?? '';
  const inDocs = [...section.matchAll(/^\| `(--[^`]+)` \| (.+) \|$/gm)].map(([, term, says]) => [term, says]);
  const inHelp = entries(help(command), 'Options').filter(([term]) => term !== '--help');
  expect(inDocs).toEqual(inHelp);
});

/** What each code means, in the words of the help: "0 drawn; 2 bad input or usage" and so on. */
function exitCodesOf(command: string): readonly (string | undefined)[] {
  const text = help(command).split('\nExit codes: ')[1]?.replace(/\s+/g, ' ').trim().replace(/\.$/, '') ?? '';
  const says = new Map(text.split(/; (?=\d )/).map((one) => [one.slice(0, 1), one.slice(2)]));
  return ['0', '1', '2', '3'].map((code) => says.get(code));
}

test.each(commands)('%s: exit codes and their words agree', (command) => {
  const section = page.split('\n## Exit codes\n')[1]?.split('\n## ')[0] ?? '';
  const row = section.split('\n').find((line) => line.startsWith(`| \`${command}\` |`)) ?? '';
  const cells = row.split('|').map((cell) => cell.trim());
  expect(exitCodesOf(command)[0]).toBeDefined();
  expect(cells.slice(2, -1).map((cell) => (cell === '' ? undefined : cell))).toEqual(exitCodesOf(command));
});

test('docs/serve.md has every setting, as --help does', () => {
  const serve = readFileSync(join(root, 'docs/serve.md'), 'utf8');
  const inDocs = [...serve.matchAll(/^\| (?:`([^`]+)`)? ?\| `(OVENWARD_\w+)` \| (.+?) \| (.+) \|$/gm)].map(
    ([, flag, variable, usually, says]) => ({ flag: flag ?? null, variable, usually, says }),
  );
  expect(inDocs).toEqual(
    Object.values(SERVE_SETTINGS).map(({ flag, variable, usually, says }) => ({ flag, variable, usually, says })),
  );
});

test('every code the command gives by itself is on the page', () => {
  const sources = readdirSync(join(root, 'src/cli'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(root, 'src/cli', name), 'utf8'));
  const codes = new Set(
    sources.flatMap((text) =>
      [...text.matchAll(/'((?:FILE|TEXT|STDIN|PORT|DAY|PLAN|POSTED|SETTING|STORE|SERVICE)_[A-Z0-9_]+)'/g)].map(
        ([, code]) => code,
      ),
    ),
  );
  expect(codes.size).toBeGreaterThan(5);
  const inDocs = new Set([...page.matchAll(/^\| `([A-Z0-9_]+)` \|/gm)].map(([, code]) => code));
  expect([...inDocs].sort()).toEqual([...codes].sort());
});
