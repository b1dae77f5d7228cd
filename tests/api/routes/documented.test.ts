// The pages of the kept, the posted and the asked: their examples are sent as they stand, one after another, and answered as they say.
import { expect, test } from 'vitest';
import { POSTING_CODES } from '../../../src/api/routes/postingCodes.ts';
import { ask } from '../running.ts';
import { answeredAsShown, docsPage, shownRequests } from '../shownRequests.ts';
import { routesHere } from './routesHere.ts';

const PAGES = ['api-days.md', 'api-questions.md'] as const;

test.each(PAGES)('the examples of %s', { timeout: 60_000 }, async (name) => {
  const examples = shownRequests(docsPage(name));
  expect(examples.length).toBeGreaterThan(2);
  const { url, clock, faults } = await routesHere();
  clock.instant = '2026-04-08T02:30:00.000Z';
  let planId = '';
  for (const { request, answer } of examples) {
    const body = request.body.replace('PLAN-ID', planId);
    const { headers } = await answeredAsShown(url, { request: { ...request, body }, answer });
    planId = /^\/v1\/plans\/(.+)$/.exec(String(headers.location))?.[1] ?? planId;
  }
  expect(faults).toEqual([]);
});

test.each(PAGES)('every address of the table of %s is there', async (name) => {
  const { url } = await routesHere();
  const addresses = [...docsPage(name).matchAll(/^\| `([A-Z]+) (\/[^`]+)` \|/gm)];
  expect(addresses.length).toBeGreaterThan(2);
  for (const [, method = '', path = ''] of addresses) {
    const address = path.replace('{name}', 'a').replace('{date}', '2026-04-08').replace('{revision}', '1');
    const { text } = await ask(url + address, { method });
    expect(text, path).not.toContain('There is nothing at this address');
  }
});

test('the codes of posting are those of the list', () => {
  const inTable = [...docsPage('api-days.md').matchAll(/^\| `([A-Z_]+)` \| (.+) \|$/gm)].map(([, code, says]) => [code, says]);
  expect(inTable).toEqual(Object.entries(POSTING_CODES));
});
