// A few of the rounds that `npm run killed:service` does many of: the service is killed while clients write, and everything acknowledged is
// there. Then what they left is spoiled, thing by thing, and each is seen.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import type { Told } from '../../store/killed/acknowledgement.ts';
import { writing } from './clients.ts';
import { bunPlans } from './days.ts';
import { installedIn } from './installed.ts';
import { lookAtCopy } from './lookAtCopy.ts';
import { manyRounds, type Rounds } from './manyRounds.ts';
import { wrongOverHttp } from './overHttp.ts';
import { serviceLife } from './serviceLife.ts';

type Done<Kind> = Extract<Told, { readonly done: Kind }>;
type Last = {
  readonly saving: Done<'saving'>;
  readonly posting: Done<'posting'>;
  readonly telling: Done<'telling'>;
  readonly accepting: Done<'accepting'>;
};

const COUNT = 3;
const folder = mkdtempSync(join(tmpdir(), 'killed-service-'));
const file = join(folder, 'service.db');
let program = '';
let rounds: Rounds;
beforeAll(async () => {
  program = installedIn(folder);
  rounds = await manyRounds({ program, file, count: COUNT, seed: 20_990_407, say: () => {} });
}, 600_000);
afterAll(() => rmSync(folder, { recursive: true }));

function lastOf<Kind extends keyof Last>(kind: Kind): Done<Kind> {
  const found = rounds.told.findLast((each): each is Done<Kind> => 'done' in each && each.done === kind);
  if (found === undefined) throw new Error(`no ${kind} was acknowledged`);
  return found;
}

function last(): Last {
  return {
    saving: lastOf('saving'),
    posting: lastOf('posting'),
    telling: lastOf('telling'),
    accepting: lastOf('accepting'),
  };
}

test('whoever kills the service while clients write: nothing acknowledged is lost, nothing is torn, every plan ends', () => {
  expect(rounds.wrong).toEqual([]);
  expect(rounds.during).toMatchObject({ starting: 1 });
  expect(Object.values(rounds.during).reduce((sum, times) => sum + times, 0)).toBeGreaterThanOrEqual(COUNT + 1);
  expect(Object.keys(last())).toHaveLength(4);
});

let copies = 0;
/** A copy of what the rounds left, with something done to it. */
function spoiled(sql: string): string {
  const copy = join(folder, `spoiled-${copies++}.db`);
  cpSync(file, copy);
  const db = new Database(copy);
  db.pragma('foreign_keys = OFF');
  const before = db.prepare<[], { readonly changes: number }>('SELECT total_changes() AS changes');
  db.exec(sql);
  // What spoils nothing would show nothing.
  expect(before.get()?.changes).toBeGreaterThan(0);
  db.close();
  return copy;
}

const ofScenario = ({ saving }: Last): string => `name = '${saving.name}' AND revision = ${saving.revision}`;
const ofPosted = ({ posting }: Last): string => `date = '${posting.date}' AND revision = ${posting.revision}`;
const ofEvents = ({ telling }: Last): string => `date = '${telling.date}' AND number >= ${telling.first}`;
const ofWork = ({ accepting }: Last): string => `id = '${accepting.id}'`;

const postedTwice = (all: Last): string => `
  INSERT INTO posted (date, revision, posted_at, time_zone, scenario, plan, plan_sha256)
    SELECT date, 1000, posted_at, time_zone, scenario, plan, plan_sha256 FROM posted WHERE ${ofPosted(all)};
  INSERT INTO posted_page (date, revision, number, svg)
    SELECT date, 1000, number, svg FROM posted_page WHERE ${ofPosted(all)}`;

type Spoil = readonly [what: string, sql: (last: Last) => string, says: (last: Last) => string];

const SPOILS: readonly Spoil[] = [
  [
    'a scenario that is gone',
    (all) => `DELETE FROM scenario WHERE ${ofScenario(all)}`,
    ({ saving: { number, name, revision } }) => `lost: ${number}, saving ${name}, ${revision}`,
  ],
  [
    'a scenario that is cut',
    (all) => `UPDATE scenario SET text = substr(text, 1, length(text) - 1) WHERE ${ofScenario(all)}`,
    ({ saving: { name, revision } }) => `torn: saving ${name}, ${revision}`,
  ],
  [
    'a posted plan that is gone',
    (all) => `DELETE FROM posted_page WHERE ${ofPosted(all)}; DELETE FROM posted WHERE ${ofPosted(all)}`,
    ({ posting: { number, date, revision } }) => `lost: ${number}, posting ${date}, ${revision}`,
  ],
  [
    'a posted plan without its last page',
    (all) => `DELETE FROM posted_page WHERE ${ofPosted(all)} AND number = 2`,
    ({ posting: { date, revision } }) => `torn: posting ${date}, ${revision}`,
  ],
  [
    'pages of no plan',
    (all) => `DELETE FROM posted WHERE ${ofPosted(all)}`,
    () => expect.stringMatching(/posted_page belongs to no row of posted/),
  ],
  ['a plan that is posted twice', postedTwice, ({ posting: { number } }) => `twice: posting ${number}`],
  ['a revision that was passed over', postedTwice, () => expect.stringMatching(/^a gap: posting .* has 1000 /)],
  [
    'events that are gone',
    (all) => `DELETE FROM happened WHERE ${ofEvents(all)}`,
    ({ telling: { number, date, first } }) => `lost: ${number}, telling ${date}, ${first}`,
  ],
  [
    'one of three events that is gone',
    (all) => `DELETE FROM happened WHERE ${ofEvents(all)} AND number = ${all.telling.first + 2}`,
    ({ telling: { date, first } }) => `torn: telling ${date}, ${first}`,
  ],
  [
    'work that is gone',
    (all) => `DELETE FROM work WHERE ${ofWork(all)}`,
    ({ accepting: { number } }) => `lost: accepting ${number}`,
  ],
  [
    'a key that is gone',
    ({ accepting }) => `DELETE FROM request_key WHERE key = 'k${accepting.number}'`,
    ({ accepting: { number } }) => `torn: work ${number} and its key`,
  ],
  [
    'the plan of another day',
    (all) => `UPDATE work SET answer = (SELECT answer FROM work WHERE number = 1) WHERE ${ofWork(all)}`,
    ({ accepting: { number } }) => `torn: work ${number}`,
  ],
];

test.each(SPOILS)('the look at the store sees %s', async (_what, sql, says) => {
  const { wrong } = await lookAtCopy(spoiled(sql(last())), rounds.told);
  expect(wrong).toContainEqual(says(last()));
});

const noneLeft = { ids: new Map<number, string>(), costs: new Map<string, number>() };

test('the look over HTTP sees what is gone or is another, and the log is not silent', { timeout: 120_000 }, async () => {
  const all = last();
  const gone = [
    `DELETE FROM scenario WHERE ${ofScenario(all)}`,
    `DELETE FROM posted WHERE ${ofPosted(all)}`,
    `DELETE FROM happened WHERE ${ofEvents(all)}`,
    `DELETE FROM work WHERE ${ofWork(all)}`,
  ];
  const life = await serviceLife(program, spoiled(gone.join(';')));
  onTestFinished(() => life.kill());
  const look = { url: life.url, left: noneLeft, tell: () => {} };
  const wrong = await wrongOverHttp({ ...look, told: rounds.told });
  expect([...wrong].sort()).toEqual([
    expect.stringMatching(`^lost: accepting ${all.accepting.number}: .* is answered 409`),
    expect.stringMatching(`^lost: posting ${all.posting.number}: .* is answered 404`),
    expect.stringMatching(`^lost: saving ${all.saving.number}: .* is answered 404`),
    `lost: telling of ${all.telling.date}: ${all.telling.number}, from ${all.telling.first}`,
  ]);
  // What it says comes through a pipe, and may come after its answer.
  await expect.poll(() => life.said().join('\n'), { timeout: 10_000 }).toContain('"status":404');

  const plan = rounds.told.find((each): each is Done<'accepting'> => 'done' in each && each.done === 'accepting');
  if (plan === undefined || plan.id === all.accepting.id) throw new Error('only one plan was acknowledged');
  const { number, id } = plan;
  const told: readonly Told[] = [{ doing: 'accepting', number }, plan];
  expect(await wrongOverHttp({ ...look, told })).toEqual([]);
  const dearer = { ...noneLeft, costs: new Map([[id, 0]]) };
  expect(await wrongOverHttp({ ...look, told, left: dearer })).toEqual([expect.stringMatching(/the best before the death 0$/)]);
  const ofNobody = { ...noneLeft, ids: new Map([[number, 'another']]) };
  expect(await wrongOverHttp({ ...look, told: told.slice(0, 1), left: ofNobody })).toEqual([
    expect.stringMatching(`^lost: accepting ${number}: .*/v1/plans/another is answered 404`),
  ]);
});

test('a service that lives and does not do what it is asked is no death', async () => {
  const server = createServer((_request, response) => {
    response.writeHead(500, { Connection: 'close' }).end();
  });
  await new Promise<void>((listens) => server.listen(0, '127.0.0.1', listens));
  onTestFinished(() => {
    server.close();
  });
  const address = server.address();
  const url = `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}`;
  const told: Told[] = [];
  let number = 0;
  const planOf = await bunPlans();
  const wrong = await writing({ url, next: () => number++, planOf, tell: (each) => void told.push(each), isDead: () => false });
  expect(wrong).toHaveLength(4);
  expect(wrong.join()).toContain('is answered 500');
  expect(told.filter((each) => 'done' in each)).toEqual([]);
});
