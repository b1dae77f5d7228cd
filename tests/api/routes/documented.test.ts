// The pages of the kept, the posted and the asked: their examples are sent as they stand, one after another, and answered as they say.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { shows } from '../../../scripts/docExamples.mjs';
import { POSTING_CODES } from '../../../src/api/routes/postingCodes.ts';
import { type Answer, ask } from '../running.ts';
import { routesHere } from './routesHere.ts';

const PAGES = ['api-days.md', 'api-questions.md'] as const;

function pageNamed(name: string): string {
  return readFileSync(resolve(import.meta.dirname, '../../../docs', name), 'utf8');
}

type Message = { readonly first: string; readonly headers: Readonly<Record<string, string>>; readonly body: string };

function messageIn(text: string): Message {
  const [head = '', ...rest] = text.split('\n\n');
  const [first = '', ...lines] = head.trimEnd().split('\n');
  const headers = Object.fromEntries(lines.map((line) => [line.split(': ')[0] ?? '', line.slice(line.indexOf(': ') + 2)]));
  return { first, headers, body: rest.join('\n\n') };
}

function examplesIn(page: string) {
  return [...page.matchAll(/```http request\n([\s\S]*?)```\n\n```http answer\n([\s\S]*?)```/g)].map(
    ([, request = '', answer = '']) => ({ request: messageIn(request), answer: messageIn(answer) }),
  );
}

/** JSON as the page shows it: two spaces. */
function shown({ headers, text }: Answer): string {
  return headers['content-type']?.includes('json') && text !== '' ? JSON.stringify(JSON.parse(text), null, 2) : text;
}

/** `…` stands for anything in a header. */
function isLike(real: unknown, written: string): boolean {
  const [begin = '', end] = written.split('…');
  return end === undefined ? real === written : typeof real === 'string' && real.startsWith(begin) && real.endsWith(end);
}

test.each(PAGES)('the examples of %s', { timeout: 60_000 }, async (name) => {
  const page = pageNamed(name);
  const examples = examplesIn(page);
  expect(examples.length).toBeGreaterThan(2);
  expect(examples.length).toBe(page.split('```http').length / 2 - 0.5);
  const { url, clock, faults } = await routesHere();
  clock.instant = '2026-04-08T02:30:00.000Z';
  let planId = '';
  for (const { request, answer } of examples) {
    const [method = '', path = ''] = request.first.split(' ');
    const body = request.body === '' ? {} : { body: request.body.replace('PLAN-ID', planId) };
    const real = await ask(url + path, { method, headers: request.headers, ...body });
    planId = /^\/v1\/plans\/(.+)$/.exec(String(real.headers.location))?.[1] ?? planId;
    expect(`HTTP/1.1 ${real.status}`, request.first).toBe(answer.first.split(' ').slice(0, 2).join(' '));
    for (const [header, value] of Object.entries(answer.headers)) {
      const sent = real.headers[header.toLowerCase()];
      expect(isLike(sent, value), `${request.first}: ${header} is ${String(sent)}`).toBe(true);
    }
    expect(shows(shown(real), answer.body), `${request.first}\n${shown(real)}`).toBe(true);
  }
  expect(faults).toEqual([]);
});

test.each(PAGES)('every address of the table of %s is there', async (name) => {
  const { url } = await routesHere();
  const addresses = [...pageNamed(name).matchAll(/^\| `([A-Z]+) (\/[^`]+)` \|/gm)];
  expect(addresses.length).toBeGreaterThan(2);
  for (const [, method = '', path = ''] of addresses) {
    const address = path.replace('{name}', 'a').replace('{date}', '2026-04-08').replace('{revision}', '1');
    const { text } = await ask(url + address, { method });
    expect(text, path).not.toContain('There is nothing at this address');
    expect(text, path).not.toContain('Cannot ');
  }
});

test('the codes of posting are those of the list', () => {
  const inTable = [...pageNamed('api-days.md').matchAll(/^\| `([A-Z_]+)` \| (.+) \|$/gm)].map(([, code, says]) => [code, says]);
  expect(inTable).toEqual(Object.entries(POSTING_CODES));
});
