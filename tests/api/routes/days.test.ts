// Posted days: a plan by its id or whole, judged, drawn once, fetched in every form; polled cheaply; today, tomorrow and yesterday.
import { expect, test } from 'vitest';
import { planSchema } from '../../../src/model/plan.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { makePlan } from '../../../src/planning.ts';
import { scenarioNamed } from '../../scenarios/allScenarios.ts';
import { type Answer, ask, askJson } from '../running.ts';
import { buns } from './bunsAlone.ts';
import { type RoutesHere, routesHere } from './routesHere.ts';

type Headers = Readonly<Record<string, string>>;

const DAY = '2026-04-08';

function put(url: string, value: unknown, headers: Headers = {}): Promise<Answer> {
  return ask(url, { method: 'PUT', headers: { 'Content-Type': 'application/json', ...headers }, body: JSON.stringify(value) });
}

function planOf(scenario: Scenario) {
  return makePlan(scenario, { effort: 5, now: () => performance.now(), pause: () => Promise.resolve(), version: '1.2.3' });
}

async function posted(here: RoutesHere, scenario: Scenario = buns(), date = scenario.date): Promise<Answer> {
  return put(`${here.url}/v1/days/${date}/posted`, { scenario, plan: await planOf(scenario) });
}

function errorsIn({ text }: Answer): readonly (readonly [string, string])[] {
  const { errors } = JSON.parse(text);
  return errors.map(({ code, path }: { readonly code: string; readonly path: string }) => [code, path]);
}

test('a plan by its id: made, posted, and fetched with its scenario; it can be posted again as it is', async () => {
  const here = await routesHere();
  const { url, faults } = here;
  const made = await askJson(`${url}/v1/plans?effort=5`, buns(), { Prefer: 'wait=20' });
  const { id, answer } = JSON.parse(made.text);
  const first = await put(`${url}/v1/days/${DAY}/posted`, { plan: id });
  expect(first.status).toBe(201);
  // RFC 9110, section 9.3.4: no validator, for what is kept is not what was sent.
  expect(first.headers.etag).toBeUndefined();
  expect(JSON.parse(first.text)).toEqual({
    date: DAY,
    revision: 1,
    postedAt: '2026-04-08T03:30:00.000Z',
    timeZone: 'Europe/Prague',
  });
  const got = JSON.parse((await ask(`${url}/v1/days/${DAY}/posted`)).text);
  expect(got).toMatchObject({ date: DAY, revision: 1, timeZone: 'Europe/Prague', pages: 2, plan: answer });
  const again = await put(`${url}/v1/days/${DAY}/posted`, { scenario: got.scenario, plan: got.plan });
  expect([again.status, JSON.parse(again.text).revision]).toEqual([200, 2]);
  const history = JSON.parse((await ask(`${url}/v1/days/${DAY}/posted/history`)).text);
  expect(history.revisions.map(({ revision }: { readonly revision: number }) => revision)).toEqual([2, 1]);
  expect(JSON.parse((await ask(`${url}/v1/days/${DAY}/posted/history/1`)).text).plan).toEqual(answer);
  expect((await ask(`${url}/v1/days/${DAY}/posted/history/3`)).status).toBe(404);
  expect(faults).toEqual([]);
});

test('a plan that is not there, is of another day, or breaks rules is not posted', async () => {
  const here = await routesHere();
  const { url, faults } = here;
  const day = `${url}/v1/days/${DAY}/posted`;
  const unknown = await put(day, { plan: 'nobody-made-this' });
  expect([unknown.status, errorsIn(unknown)]).toEqual([422, [['UNKNOWN_PLAN', '/plan']]]);
  const other = await posted(here, buns(), '2026-04-09');
  expect([other.status, errorsIn(other)]).toEqual([422, [['OTHER_DATE', '/plan']]]);
  const plan = await planOf(buns());
  const spoiled = { ...plan, score: { ...plan.score, finishMinute: plan.score.finishMinute + 1 } };
  expect(errorsIn(await put(day, { scenario: buns(), plan: spoiled }))).toEqual([['SCORE', '/plan']]);
  expect(errorsIn(await put(day, { scenario: buns({ name: 'Other buns' }), plan }))).toEqual([['SAME_SCENARIO', '/plan']]);
  const wrong = await put(day, { scenario: { ...buns(), nam: 1 }, plan: { ...plan, holds: 'much' } });
  expect(errorsIn(wrong)).toEqual([
    ['UNKNOWN_KEY', '/scenario/nam'],
    ['UNKNOWN_WORD', '/plan/holds'],
  ]);
  expect(errorsIn(await put(day, {})).map(([code]) => code)).toEqual(['MISSING', 'MISSING']);
  expect((await put(day, [])).status).toBe(422);
  expect((await put(day, { plan: '../../etc/passwd' })).status).toBe(422);
  expect((await ask(day)).status).toBe(404);
  expect(faults).toEqual([]);
});

test('the answer to a fit has no single plan; a re-plan can be posted', async () => {
  const here = await routesHere();
  const { url, faults } = here;
  const fit = await askJson(
    `${url}/v1/fits?effort=5`,
    { scenario: buns(), add: [{ product: 'bun', pieces: 20, readyBy: '08:30' }] },
    { Prefer: 'wait=20' },
  );
  const refused = await put(`${url}/v1/days/${DAY}/posted`, { plan: JSON.parse(fit.text).id });
  expect(errorsIn(refused)).toEqual([['NO_SINGLE_PLAN', '/plan']]);
  const plan = await planOf(buns());
  const happened = { happened: [{ what: 'ordered', product: 'bun', pieces: 20, readyBy: '08:30' }] };
  const replan = await askJson(
    `${url}/v1/replans?effort=20`,
    { scenario: buns(), plan, now: '05:00', happened },
    { Prefer: 'wait=20' },
  );
  const { id, answer } = JSON.parse(replan.text);
  expect((await put(`${url}/v1/days/${DAY}/posted`, { plan: id })).status).toBe(201);
  expect(JSON.parse((await ask(`${url}/v1/days/${DAY}/posted`)).text).plan).toEqual(answer.plan);
  expect(faults).toEqual([]);
});

test('the sheet, page by page, with links to the pages beside (RFC 8288)', async () => {
  const here = await routesHere();
  await posted(here, scenarioNamed('more-than-the-oven-takes'));
  const date = scenarioNamed('more-than-the-oven-takes').date;
  const sheet = `${here.url}/v1/days/${date}/posted.svg`;
  const first = await ask(sheet);
  expect(first.headers).toMatchObject({
    'content-type': 'image/svg+xml; charset=utf-8',
    'content-location': `/v1/days/${date}/posted.svg`,
    link: `</v1/days/${date}/posted.svg?page=2>; rel="next"`,
  });
  expect(first.text).toMatch(/^<svg|^<\?xml/);
  const second = await ask(`${sheet}?page=2`);
  expect(second.headers.link).toContain(`</v1/days/${date}/posted.svg?page=1>; rel="prev"`);
  expect(second.text).not.toBe(first.text);
  expect((await ask(`${sheet}?page=99`)).status).toBe(404);
  for (const page of ['0', '-1', 'two', '1.5', '1e1']) expect((await ask(`${sheet}?page=${page}`)).status, page).toBe(400);
  expect(here.faults).toEqual([]);
});

test('polling: 304 while nothing changes, nothing drawn again; a new plan is a new sheet (RFC 9110, sections 8.8.3, 13.1.2)', async () => {
  const here = await routesHere();
  await posted(here);
  expect(here.drawn.count).toBe(1);
  for (const form of ['', '.svg', '.txt', '.ics']) {
    const address = `${here.url}/v1/days/today/posted${form}`;
    const { headers, status } = await ask(address);
    expect(status).toBe(200);
    expect(headers['cache-control']).toBe('private, no-cache');
    expect(headers.etag).toMatch(/^"[A-Za-z0-9_-]{43}"$/);
    const again = await ask(address, { headers: { 'If-None-Match': String(headers.etag) } });
    expect([again.status, again.text, again.headers.etag, again.headers['cache-control']]).toEqual([
      304,
      '',
      headers.etag,
      'private, no-cache',
    ]);
  }
  expect(here.drawn.count).toBe(1);
  const sheet = `${here.url}/v1/days/today/posted.svg`;
  const before = await ask(sheet);
  await posted(here, buns({ orders: [{ product: 'bun', pieces: 20, readyBy: '08:00' }] }));
  const after = await ask(sheet, { headers: { 'If-None-Match': String(before.headers.etag) } });
  expect(after.status).toBe(200);
  expect(after.headers.etag).not.toBe(before.headers.etag);
});

test('what to do as text, and as a calendar', async () => {
  const here = await routesHere();
  await posted(here);
  const list = await ask(`${here.url}/v1/days/${DAY}/posted.txt`);
  expect(list.headers['content-type']).toBe('text/plain; charset=utf-8');
  expect(list.text).toMatch(/^Buns alone, Europe\/Prague$/m);
  expect(list.text).toMatch(/^\d\d:\d\d {2}Ida: |^\d\d:\d\d {2}.+/m);
  const calendar = await ask(`${here.url}/v1/days/${DAY}/posted.ics`);
  expect(calendar.headers['content-type']).toBe('text/calendar; charset=utf-8');
  expect(calendar.text).toMatch(/^BEGIN:VCALENDAR\r\n/);
  expect((await ask(`${here.url}/v1/days/${DAY}/posted.svg`, { headers: { Accept: 'application/json' } })).status).toBe(406);
});

test('PUT If-Match and If-None-Match (RFC 9110, sections 13.1.1, 13.1.2)', async () => {
  const here = await routesHere();
  const { url } = here;
  const day = `${url}/v1/days/${DAY}/posted`;
  const scenario = buns();
  const plan = await planOf(scenario);
  expect((await put(day, { scenario, plan }, { 'If-Match': '*' })).status).toBe(412);
  expect((await put(day, { scenario, plan }, { 'If-None-Match': '*' })).status).toBe(201);
  expect((await put(day, { scenario, plan }, { 'If-None-Match': '*' })).status).toBe(412);
  const { headers } = await ask(day);
  const tag = String(headers.etag);
  expect((await put(day, { scenario, plan }, { 'If-Match': `W/${tag}` })).status).toBe(412);
  const both = [1, 2, 3].map(() => put(day, { scenario, plan }, { 'If-Match': tag }));
  expect((await Promise.all(both)).map(({ status }) => status).sort()).toEqual([200, 412, 412]);
  expect((await put(day, { scenario, plan }, { 'If-Match': tag })).status).toBe(412);
});

test('script in names is text in the sheet, and the sheet may run nothing', async () => {
  const here = await routesHere();
  const name = '<script>alert(1)</script>"\'&<img src=x onerror=alert(2)>';
  const scenario = buns({ name, products: buns().products.map((product) => ({ ...product, name })) });
  expect((await posted(here, scenario)).status).toBe(201);
  const { text, headers } = await ask(`${here.url}/v1/days/${DAY}/posted.svg`);
  expect(text).not.toMatch(/<script|<img|onerror=alert\(2\)>/i);
  expect(text).toContain('&lt;script&gt;');
  const policy = String(headers['content-security-policy']);
  expect(policy).toContain("default-src 'none'");
  expect(policy).not.toContain('script-src');
  const list = await ask(`${here.url}/v1/days/${DAY}/posted.txt`);
  expect(list.headers['content-type']).toBe('text/plain; charset=utf-8');
});

/** A day of buns of a date in a zone. */
function bunsOn(date: string, timeZone: string): Scenario {
  return buns({ date, timeZone });
}

// Offsets by the IANA time zone database: Auckland is UTC+12 in June, Prague UTC+2, Honolulu UTC-10.
test.each([
  ['Pacific/Auckland', '2026-06-09T11:59:59.999Z', '2026-06-09'],
  ['Pacific/Auckland', '2026-06-09T12:00:00.000Z', '2026-06-10'],
  ['Europe/Prague', '2026-06-09T21:59:59.999Z', '2026-06-09'],
  ['Europe/Prague', '2026-06-09T22:00:00.000Z', '2026-06-10'],
  ['Pacific/Honolulu', '2026-06-10T09:59:59.999Z', '2026-06-09'],
  ['Pacific/Honolulu', '2026-06-10T10:00:00.000Z', '2026-06-10'],
])('today in %s at %s is %s', async (timeZone, instant, today) => {
  const here = await routesHere();
  for (const date of ['2026-06-08', '2026-06-09', '2026-06-10', '2026-06-11'])
    expect((await posted(here, bunsOn(date, timeZone))).status).toBe(201);
  here.clock.instant = instant;
  const dates = ['yesterday', 'today', 'tomorrow'].map(async (word) => {
    const { headers, text } = await ask(`${here.url}/v1/days/${word}/posted`);
    const { date } = JSON.parse(text);
    expect(headers['content-location']).toBe(`/v1/days/${date}/posted`);
    return date;
  });
  const around = ['2026-06-08', '2026-06-09', '2026-06-10', '2026-06-11'];
  const at = around.indexOf(today);
  expect(await Promise.all(dates)).toEqual(around.slice(at - 1, at + 2));
});

test('the time zone the service was given goes before that of a plan', async () => {
  const here = await routesHere({ timeZone: 'Pacific/Auckland' });
  await posted(here, bunsOn('2026-06-10', 'Europe/Prague'));
  here.clock.instant = '2026-06-09T12:30:00.000Z';
  expect((await ask(`${here.url}/v1/days/today/posted`)).status).toBe(200);
});

test('the night an hour is missing: today is a date, not a day of 24 hours', async () => {
  // Prague went from 02:00 to 03:00 on 29 March 2026, by the rule of Directive 2000/84/EC: the last Sunday in March at 01:00 UTC.
  const here = await routesHere({ timeZone: 'Europe/Prague' });
  await posted(here, bunsOn('2026-03-30', 'Europe/Prague'));
  here.clock.instant = '2026-03-29T21:59:59.000Z';
  expect((await ask(`${here.url}/v1/days/today/posted`)).status).toBe(404);
  expect((await ask(`${here.url}/v1/days/tomorrow/posted`)).status).toBe(200);
  here.clock.instant = '2026-03-29T22:00:00.000Z';
  expect((await ask(`${here.url}/v1/days/today/posted`)).status).toBe(200);
});

test.each(['2026-02-30', '2026-13-01', '20260408', 'TODAY', '..%2f', '2026-04-08%00', '__proto__'])(
  'no day: %s',
  async (date) => {
    const { url, faults } = await routesHere();
    const got = await ask(`${url}/v1/days/${date}/posted`);
    expect(got.status).toBe(400);
    expect(errorsIn(got)).toEqual([['BAD_DATE', '/path/date']]);
    expect(faults).toEqual([]);
  },
);

test('other methods, other media types', async () => {
  const { url } = await routesHere();
  const deleted = await ask(`${url}/v1/days/${DAY}/posted`, { method: 'DELETE' });
  expect([deleted.status, deleted.headers.allow]).toEqual([405, 'GET, HEAD, PUT']);
  expect((await put(`${url}/v1/days/${DAY}/posted.svg`, {})).status).toBe(405);
  expect((await put(`${url}/v1/days/${DAY}/posted`, {}, { 'Content-Type': 'application/yaml' })).status).toBe(415);
  expect((await ask(`${url}/v1/days/${DAY}/posted.png`)).status).toBe(404);
  expect((await ask(`${url}/v1/days/${DAY}/posted`)).status).toBe(404);
});

test('the plan in a posted day is one of ours', async () => {
  const here = await routesHere();
  await posted(here);
  const { plan } = JSON.parse((await ask(`${here.url}/v1/days/${DAY}/posted`)).text);
  expect(planSchema.parse(plan).scenario.name).toBe('Buns alone');
});
