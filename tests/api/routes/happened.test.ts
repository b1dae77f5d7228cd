// What has happened on a day: told against the posted plan, kept in the order told.
import { expect, test } from 'vitest';
import { makePlan } from '../../../src/planning.ts';
import { ask, askJson } from '../running.ts';
import { buns } from './bunsAlone.ts';
import { type RoutesHere, routesHere } from './routesHere.ts';

const DAY = '2026-04-08';

async function post({ url }: RoutesHere): Promise<void> {
  const plan = await makePlan(buns(), {
    effort: 5,
    now: () => performance.now(),
    pause: () => Promise.resolve(),
    version: '1.2.3',
  });
  const body = JSON.stringify({ scenario: buns(), plan });
  const headers = { 'Content-Type': 'application/json' };
  expect((await ask(`${url}/v1/days/${DAY}/posted`, { method: 'PUT', headers, body })).status).toBe(201);
}

function tell({ url }: RoutesHere, ...happened: readonly unknown[]) {
  return askJson(`${url}/v1/days/${DAY}/happened`, { happened });
}

const AWAY = { what: 'away', person: 'ida', from: '08:30' };

test('events are kept with the instant they were told at, the record is never changed', async () => {
  const here = await routesHere();
  await post(here);
  const first = await tell(here, AWAY, { what: 'ordered', product: 'bun', pieces: 20, readyBy: '08:30' });
  expect([first.status, first.headers.location]).toEqual([201, `/v1/days/${DAY}/happened`]);
  here.clock.instant = '2026-04-08T04:00:00.000Z';
  await tell(here, AWAY);
  const list = await ask(`${here.url}/v1/days/today/happened`);
  expect(JSON.parse(list.text)).toEqual({
    date: DAY,
    happened: [
      { number: 1, toldAt: '2026-04-08T03:30:00.000Z', event: AWAY },
      {
        number: 2,
        toldAt: '2026-04-08T03:30:00.000Z',
        event: { what: 'ordered', product: 'bun', pieces: 20, readyBy: '08:30' },
      },
      { number: 3, toldAt: '2026-04-08T04:00:00.000Z', event: AWAY },
    ],
  });
  const again = await ask(`${here.url}/v1/days/today/happened`, { headers: { 'If-None-Match': String(list.headers.etag) } });
  expect(again.status).toBe(304);
  expect((await ask(`${here.url}/v1/days/${DAY}/happened`, { method: 'DELETE' })).status).toBe(405);
  expect(here.faults).toEqual([]);
});

test('against the posted plan: people, tasks and products it has, and nothing that lies ahead; nothing is kept of what is wrong', async () => {
  const here = await routesHere();
  await post(here);
  // 05:30 in Prague.
  const wrong = await tell(
    here,
    AWAY,
    { what: 'away', person: 'ada', from: '06:00' },
    { what: 'lost', tray: 'bun-9' },
    { what: 'began', task: 'bun-1/bake', at: '06:30' },
  );
  expect(wrong.status).toBe(422);
  const errors = JSON.parse(wrong.text).errors.map(({ code, path }: Record<string, unknown>) => [code, path]);
  expect(errors).toEqual([
    ['UNKNOWN_PERSON', '/happened/1/person'],
    ['UNKNOWN_TRAY', '/happened/2/tray'],
    ['AFTER_NOW', '/happened/3/at'],
  ]);
  expect(JSON.parse((await ask(`${here.url}/v1/days/${DAY}/happened`)).text).happened).toEqual([]);
  expect(here.faults).toEqual([]);
});

test('told the day after it is of the whole day', async () => {
  const here = await routesHere();
  await post(here);
  here.clock.instant = '2026-04-09T12:00:00.000Z';
  expect((await tell(here, { what: 'lost', tray: 'bun-1' })).status).toBe(201);
});

test('where nothing is posted the shape of events is looked at alone', async () => {
  const here = await routesHere();
  expect((await tell(here, { what: 'lost', tray: 'anything-1' })).status).toBe(201);
  expect((await tell(here, { what: 'lost' })).status).toBe(422);
  expect((await tell(here, { what: 'exploded' })).status).toBe(422);
  expect((await tell(here)).status).toBe(422);
  expect((await askJson(`${here.url}/v1/days/${DAY}/happened`, [])).status).toBe(422);
  expect((await ask(`${here.url}/v1/days/${DAY}/happened`, { method: 'POST', body: '{}' })).status).toBe(415);
  expect(here.faults).toEqual([]);
});
