// Requests with their answers as the pages of docs show them: read off a page, sent as they stand, and compared.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect } from 'vitest';
import { shows } from '../../scripts/docExamples.mjs';
import { type Answer, ask } from './running.ts';

export type Message = { readonly first: string; readonly headers: Readonly<Record<string, string>>; readonly body: string };
export type ShownRequest = { readonly request: Message; readonly answer: Message };

export function docsPage(name: string): string {
  return readFileSync(resolve(import.meta.dirname, '../../docs', name), 'utf8');
}

function messageIn(text: string): Message {
  const [head = '', ...rest] = text.split('\n\n');
  const [first = '', ...lines] = head.trimEnd().split('\n');
  const headers = Object.fromEntries(lines.map((line) => [line.split(': ')[0] ?? '', line.slice(line.indexOf(': ') + 2)]));
  return { first, headers, body: rest.join('\n\n') };
}

/** Every request of a page; throws when one lacks its answer. */
export function shownRequests(page: string): readonly ShownRequest[] {
  const found = [...page.matchAll(/```http request\n([\s\S]*?)```\n\n```http answer\n([\s\S]*?)```/g)].map(
    ([, request = '', answer = '']) => ({ request: messageIn(request), answer: messageIn(answer) }),
  );
  if (found.length !== page.split('```http').length / 2 - 0.5)
    throw new Error('A request of the page has no answer right after it');
  return found;
}

/** JSON as the pages show it: two spaces. */
function shown({ headers, text }: Answer): string {
  return headers['content-type']?.includes('json') && text !== '' ? JSON.stringify(JSON.parse(text), null, 2) : text;
}

/** `…` stands for anything in a header. */
function isLike(real: unknown, written: string): boolean {
  const [begin = '', end] = written.split('…');
  return end === undefined ? real === written : typeof real === 'string' && real.startsWith(begin) && real.endsWith(end);
}

/** Sends it to the service at `url` and expects the answer of the page. */
export async function answeredAsShown(url: string, { request, answer }: ShownRequest): Promise<Answer> {
  const [method = '', path = ''] = request.first.split(' ');
  const body = request.body === '' ? {} : { body: request.body };
  const real = await ask(url + path, { method, headers: request.headers, ...body });
  expect(`HTTP/1.1 ${real.status}`, request.first).toBe(answer.first.split(' ').slice(0, 2).join(' '));
  for (const [header, value] of Object.entries(answer.headers)) {
    const sent = real.headers[header.toLowerCase()];
    expect(isLike(sent, value), `${request.first}: ${header} is ${String(sent)}`).toBe(true);
  }
  expect(shows(shown(real), answer.body), `${request.first}\n${shown(real)}`).toBe(true);
  return real;
}
