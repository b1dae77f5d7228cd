// Server-sent events of work, read by a plain client and by the EventSource of Chromium: WHATWG HTML, section 9.2.
import { createServer, get, type IncomingMessage } from 'node:http';
import { chromium } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { finePlan } from '../cli/samplePlan.ts';
import { scenarioText } from '../scenarios/allScenarios.ts';
import { heldCrew } from './jobs/heldCrew.ts';
import { ask, askYaml, runningHere, until } from './running.ts';

const body = scenarioText('only-what-must-be-said');
const news = (says: string) => ({ news: { progress: null, says, seconds: 1 }, best: null });

async function held(heartbeatMs = 15_000) {
  const crew = heldCrew();
  const service = await runningHere({ heartbeatMs }, {}, { crew });
  const plans = `${service.url}/v1/plans`;
  const { id } = JSON.parse((await askYaml(plans, body)).text);
  return { crew, service, plans, id, events: `${plans}/${id}/events` };
}

/** A stream that is being read: its text so far, and whether it has ended. */
async function stream(url: string, headers: Readonly<Record<string, string>> = {}) {
  const seen = { text: '', isOver: false };
  const response = await new Promise<IncomingMessage>((resolve, reject) => {
    get(url, { headers, agent: false }, resolve).once('error', reject);
  });
  response.setEncoding('utf8');
  response.on('data', (text: string) => {
    seen.text += text;
  });
  response.on('end', () => {
    seen.isOver = true;
  });
  return { seen, response };
}

/** Blocks between empty lines that name an event, as [event, id, data]. */
function eventsIn(text: string): readonly (readonly [string, string, unknown])[] {
  return [...text.matchAll(/event: (.*)\nid: (.*)\ndata: (.*)\n\n/g)].map(([, name = '', id = '', data = '']) => [
    name,
    id,
    JSON.parse(data),
  ]);
}

test('state, progress, done; then the stream ends', async () => {
  const { crew, events, id } = await held();
  const { seen, response } = await stream(events);
  expect(response.headers['content-type']).toMatch(/^text\/event-stream\b/);
  expect(response.headers['cache-control']).toBe('no-store');
  await until(() => eventsIn(seen.text).length === 1);
  crew.held[0]?.tell(news('better'));
  await until(() => eventsIn(seen.text).length === 2);
  crew.held[0]?.letGo();
  await until(() => seen.isOver);
  expect(seen.text).toMatch(/^retry: \d+\n\n/);
  expect(eventsIn(seen.text)).toEqual([
    ['state', '1', expect.objectContaining({ id, state: 'running', ahead: 0 })],
    ['progress', '2', { progress: null, says: 'better', seconds: 1 }],
    ['done', 'end', expect.objectContaining({ id, state: 'done' })],
  ]);
});

test('who connects again gets where it stands first, with ids that go on rising', async () => {
  const { crew, events } = await held();
  crew.held[0]?.tell(news('better'));
  const { seen } = await stream(events, { 'Last-Event-ID': '7' });
  await until(() => eventsIn(seen.text).length === 2);
  expect(eventsIn(seen.text).map(([name, id]) => [name, id])).toEqual([
    ['state', '8'],
    ['progress', '9'],
  ]);
});

test('of ended work: done at once, and 204 for who has heard it', async () => {
  const { crew, events, service, id } = await held();
  crew.held[0]?.letGo();
  await service.parts.jobs.wait(id, 10_000, new AbortController().signal);
  expect(eventsIn((await ask(events)).text).map(([name]) => name)).toEqual(['done']);
  expect((await ask(events, { headers: { 'Last-Event-ID': 'end' } })).status).toBe(204);
});

test('signs of life are comments', async () => {
  const { events } = await held(20);
  const { seen } = await stream(events);
  await until(() => /(\n: [^\n]*\n\n){1,}(: [^\n]*\n\n)/.test(seen.text));
});

test('a service that stops tells who follows: running work is done, waiting work goes on another time', async () => {
  const { service, plans, events } = await held();
  const waiting = JSON.parse((await askYaml(plans, body)).text).id;
  const [first, second] = [await stream(events), await stream(`${plans}/${waiting}/events`)];
  await until(() => first.seen.text.includes('state') && second.seen.text.includes('state'));
  await service.stop();
  await until(() => first.seen.isOver && second.seen.isOver);
  expect(eventsIn(first.seen.text).at(-1)).toEqual(['done', 'end', expect.objectContaining({ state: 'stopped' })]);
  expect(eventsIn(second.seen.text).map(([name]) => name)).toEqual(['state']);
});

test('a reader that goes away is forgotten, and the work goes on', async () => {
  const { crew, events, service } = await held();
  const { response } = await stream(events);
  response.destroy();
  crew.held[0]?.tell(news('better'));
  crew.held[0]?.tell({ ...news('best'), best: JSON.stringify(finePlan) });
  expect(crew.held[0]?.isStopped).toBe(false);
  expect(service.faults).toEqual([]);
});

test('Chromium reads it with EventSource, and is told to stop once it is done', async () => {
  const { crew, events } = await held();
  // A page of the same origin as the service: everything else is shut out. It stands before the service and passes events on.
  const asked: string[] = [];
  const front = createServer((request, response) => {
    if (request.url !== '/events') {
      response.setHeader('Content-Type', 'text/html').end('<title>A wall</title>');
      return;
    }
    const last = request.headers['last-event-id'];
    asked.push(String(last));
    get(events, { headers: typeof last === 'string' ? { 'Last-Event-ID': last } : {}, agent: false }, (from) => {
      response.writeHead(from.statusCode ?? 500, from.headers);
      from.pipe(response);
    });
  });
  await new Promise<void>((resolve) => front.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => {
    front.closeAllConnections();
    front.close();
  });
  const address = front.address();
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '', args: ['--no-sandbox'] });
  onTestFinished(() => browser.close());
  const page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}/`);
  const read = page.evaluate<string[]>(`new Promise((resolve) => {
    const seen = [];
    const source = new EventSource('/events');
    for (const name of ['state', 'progress', 'done'])
      source.addEventListener(name, ({ data, lastEventId }) => seen.push(name + ' ' + lastEventId + ' ' + (JSON.parse(data).state ?? '')));
    source.onerror = () => { if (source.readyState === EventSource.CLOSED) resolve(seen); };
  })`);
  await until(() => asked.length === 1);
  crew.held[0]?.tell(news('better'));
  await new Promise((resolve) => setTimeout(resolve, 100));
  crew.held[0]?.letGo();
  expect(await read).toEqual(['state 1 running', 'progress 2 ', 'done end done']);
  expect(asked).toEqual(['undefined', 'end']);
});
