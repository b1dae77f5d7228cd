// Fits, comparisons and re-plans over HTTP: answered, drawn, and refused with every error at its place in the body.
import { expect, test } from 'vitest';
import { judge } from '../../../src/check/judge.ts';
import { comparisonSchema } from '../../../src/model/comparison.ts';
import { fitAnswerSchema } from '../../../src/model/fitAnswer.ts';
import type { Plan } from '../../../src/model/plan.ts';
import { replanAnswerSchema } from '../../../src/model/replanAnswer.ts';
import { makePlan } from '../../../src/planning.ts';
import { type Answer, ask, askJson } from '../running.ts';
import { buns } from './bunsAlone.ts';
import { type RoutesHere, routesHere } from './routesHere.ts';

const WAIT = { Prefer: 'wait=20' };
const NEW_BUN = {
  addition: 1,
  products: [
    {
      id: 'long-bun',
      dough: 'bun-dough',
      pieceG: 120,
      piecesPerTray: 12,
      steps: [
        { do: 'shape', minutesPerTray: 8 },
        { do: 'bake', minutes: 18, temperatureC: 200 },
      ],
    },
  ],
  orders: [{ product: 'long-bun', pieces: 12, readyBy: '08:30' }],
};

function planOf(): Promise<Plan> {
  return makePlan(buns(), { effort: 5, now: () => performance.now(), pause: () => Promise.resolve(), version: '1.2.3' });
}

function errorsIn({ status, text }: Answer): readonly (readonly [string, string])[] {
  expect(status).toBe(422);
  const { errors } = JSON.parse(text);
  for (const error of errors) expect(Object.keys(error).sort()).toEqual(['code', 'doThis', 'path', 'says']);
  return errors.map(({ code, path }: { readonly code: string; readonly path: string }) => [code, path]);
}

function question({ url }: RoutesHere, kind: string, body: unknown): Promise<Answer> {
  return askJson(`${url}/v1/${kind}?effort=5&seconds=1.5`, body, WAIT);
}

function answerIn({ status, text }: Answer): unknown {
  expect(status, text).toBe(200);
  return JSON.parse(text).answer;
}

test('a fit: orders one by one, an addition, both; from a plan that is there', async () => {
  const here = await routesHere();
  const add = [{ product: 'bun', pieces: 20, readyBy: '08:30' }];
  const byOrders = fitAnswerSchema.parse(answerIn(await question(here, 'fits', { scenario: buns(), add })));
  expect(byOrders.added.map(({ product, pieces }) => [product, pieces])).toEqual([['bun', 20]]);
  expect(judge(buns(), byOrders.base).breaches).toEqual([]);
  const plan = await planOf();
  const both = fitAnswerSchema.parse(answerIn(await question(here, 'fits', { scenario: buns(), add, addition: NEW_BUN, plan })));
  expect(both.added.map(({ product }) => product)).toEqual(['long-bun', 'bun']);
  expect(both.base.tasks).toEqual(plan.tasks);
  expect(here.faults).toEqual([]);
});

test('a fit that cannot be asked', async () => {
  const here = await routesHere();
  const scenario = buns();
  const refused = async (body: unknown) => errorsIn(await question(here, 'fits', body));
  expect(await refused({ scenario })).toEqual([['MISSING', '/add']]);
  expect(await refused({ scenario, add: [{ product: 'bread', pieces: 20, readyBy: '08:30' }] })).toEqual([
    ['UNKNOWN_PRODUCT', '/add/0/product'],
  ]);
  expect(await refused({ scenario, add: [{ product: 'bun', pieces: 0.5, readyBy: 'late' }] })).toEqual([
    ['NOT_WHOLE', '/add/0/pieces'],
    ['BAD_TIME', '/add/0/readyBy'],
  ]);
  const orders = [{ product: 'round-bun', pieces: 12, readyBy: '08:30' }];
  expect(await refused({ scenario, addition: { ...NEW_BUN, orders } })).toEqual([
    ['UNKNOWN_PRODUCT', '/addition/orders/0/product'],
  ]);
  expect(await refused({ scenario: { ...scenario, nam: 1 }, plan: {}, add: [] })).toContainEqual([
    'UNKNOWN_KEY',
    '/scenario/nam',
  ]);
  const plan = await planOf();
  const spoiled = { ...plan, score: { ...plan.score, finishMinute: plan.score.finishMinute + 1 } };
  expect(await refused({ scenario, plan: spoiled, add: [{ product: 'bun', pieces: 20, readyBy: '08:30' }] })).toEqual([
    ['SCORE', '/plan'],
  ]);
  expect(here.faults).toEqual([]);
});

test('a comparison of changes, and its drawing', async () => {
  const here = await routesHere();
  const changes = [{ title: 'One tray', patch: [{ op: 'replace', path: '/orders/0/pieces', value: 20 }] }];
  const asked = await question(here, 'comparisons', { scenario: buns(), changes });
  const comparison = comparisonSchema.parse(answerIn(asked));
  expect(comparison.days.map(({ title }) => title)).toEqual(['One tray']);
  const drawing = await ask(`${here.url}${asked.headers.location}.svg`);
  expect([drawing.status, drawing.headers['content-type']]).toEqual([200, 'image/svg+xml; charset=utf-8']);
  expect(drawing.text).toContain('One tray');
  expect((await ask(`${here.url}${asked.headers.location}.svg?page=9`)).status).toBe(404);
  expect((await ask(`${here.url}${asked.headers.location}.ics`)).status).toBe(404);
  expect(here.faults).toEqual([]);
});

test('a comparison over a range of values', async () => {
  const here = await routesHere();
  const sweep = { pointer: '/equipment/ovens/0/decks/0/trays', from: 1, to: 3, step: 2 };
  const asked = await question(here, 'comparisons', { scenario: buns(), sweep, moreOf: 'bun' });
  const comparison = comparisonSchema.parse(answerIn(asked));
  expect(comparison.days.map(({ value }) => value)).toEqual([1, 3]);
  expect(comparison.sweep).toMatchObject({ pointer: sweep.pointer, now: 2 });
  expect(here.faults).toEqual([]);
});

test.each<[string, Readonly<Record<string, unknown>>, readonly (readonly [string, string])[]]>([
  ['neither', {}, [['MISSING', '/changes']]],
  [
    'both',
    { changes: [], sweep: { pointer: '', from: 1, to: 2 } },
    [
      ['WRONG_COUNT', '/changes'],
      ['UNKNOWN_KEY', '/sweep'],
    ],
  ],
  [
    'a place that is not there, a product nobody ordered',
    { changes: [{ title: 'No', patch: [{ op: 'remove', path: '/equipment/proofers/3' }] }], moreOf: 'bread' },
    [
      ['NO_SUCH_PLACE', '/changes/0/patch/0/path'],
      ['UNKNOWN_PRODUCT', '/moreOf'],
    ],
  ],
  ['no number', { sweep: { pointer: '/name', from: 1, to: 2 } }, [['NOT_SWEPT', '/sweep/pointer']]],
  ['upside down', { sweep: { pointer: '/orders/0/pieces', from: 5, to: 2 } }, [['RANGE_UPSIDE_DOWN', '/sweep/to']]],
  ['too many', { sweep: { pointer: '/orders/0/pieces', from: 1, to: 51 } }, [['WRONG_COUNT', '/sweep']]],
  [
    'values that make no day',
    { sweep: { pointer: '/equipment/ovens/0/decks/0/trays', from: 0, to: 1 } },
    [['OUT_OF_BOUNDS', '/sweep/pointer']],
  ],
])('a comparison that cannot be asked: %s', async (_, body, errors) => {
  const here = await routesHere();
  expect(errorsIn(await question(here, 'comparisons', { scenario: buns(), ...body }))).toEqual(errors);
  expect(here.faults).toEqual([]);
});

test('a re-plan: its plan keeps the rules of its scenario, and is there as sheet, list and calendar', async () => {
  const here = await routesHere();
  const plan = await planOf();
  const happened = { happened: [{ what: 'ordered', product: 'bun', pieces: 20, readyBy: '08:30' }] };
  const asked = await question(here, 'replans', { scenario: buns(), plan, now: '05:00', happened });
  const answer = replanAnswerSchema.parse(answerIn(asked));
  expect(answer.isUnchanged).toBe(false);
  expect(judge(answer.scenario, answer.plan).breaches).toEqual([]);
  for (const [suffix, begins] of [
    ['.svg', /^<(\?xml|svg)/],
    ['.txt', /^Buns alone/],
    ['.ics', /^BEGIN:VCALENDAR/],
  ] as const) {
    const { status, text } = await ask(`${here.url}${asked.headers.location}${suffix}`);
    expect([status, begins.test(text)]).toEqual([200, true]);
  }
  expect(here.faults).toEqual([]);
});

test('with nothing told the plan comes back as it is', async () => {
  const here = await routesHere();
  const plan = await planOf();
  const answer = replanAnswerSchema.parse(answerIn(await question(here, 'replans', { scenario: buns(), plan, now: '05:00' })));
  expect(answer.isUnchanged).toBe(true);
  expect(answer.plan).toEqual(plan);
});

test('a re-plan that cannot be asked, or after which no day can be, is refused and not accepted to fail', async () => {
  const here = await routesHere();
  const [scenario, plan] = [buns(), await planOf()];
  const refused = async (over: Readonly<Record<string, unknown>>) =>
    errorsIn(await question(here, 'replans', { scenario, plan, now: '05:00', ...over }));
  expect(await refused({ now: '09:00' })).toEqual([['TIME_OUTSIDE_DAY', '/now']]);
  expect(await refused({ now: 'soon' })).toEqual([['BAD_TIME', '/now']]);
  expect(await refused({ happened: { happened: [{ what: 'lost', tray: 'bun-9' }] } })).toEqual([
    ['UNKNOWN_TRAY', '/happened/happened/0/tray'],
  ]);
  expect(await refused({ scenario: buns({ name: 'Other buns' }) })).toEqual([['SAME_SCENARIO', '/plan']]);
  // Ida alone shapes: without her nobody does.
  const gone = await refused({ happened: { happened: [{ what: 'away', person: 'ida', from: '04:00' }] } });
  expect(gone.length).toBeGreaterThan(0);
  for (const [, path] of gone) expect(path).toMatch(/^\/happened/);
  expect((await here.parts.store.openWork()).length).toBe(0);
  expect(here.faults).toEqual([]);
});

test('the query, the media type and the body as text', async () => {
  const here = await routesHere();
  for (const kind of ['fits', 'comparisons', 'replans']) {
    const address = `${here.url}/v1/${kind}`;
    expect((await askJson(`${address}?seconds=99`, {})).status).toBe(400);
    expect((await ask(address, { method: 'POST', headers: { 'Content-Type': 'application/yaml' }, body: '{}' })).status).toBe(
      415,
    );
    expect((await ask(address, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{' })).status).toBe(400);
    expect((await askJson(address, [])).status).toBe(422);
    const deep = `${'{"scenario":'.repeat(500)}1${'}'.repeat(500)}`;
    const refused = await ask(address, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: deep });
    expect([refused.status, JSON.parse(refused.text).errors[0].code]).toEqual([422, 'TOO_DEEP']);
    expect((await ask(address)).status).toBe(405);
  }
  expect(here.faults).toEqual([]);
});
