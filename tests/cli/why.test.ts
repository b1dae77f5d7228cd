// `ovenward why` on real files: judged first, then trays, clock, bound and clash, for people and as JSON.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { realParts } from '../../src/cli/realParts.ts';
import { run } from '../../src/cli/run.ts';
import type { Plan } from '../../src/model/plan.ts';
import { whyAnswerSchema } from '../../src/model/why.ts';
import { planned } from '../laws/planned.ts';
import { PLANTED } from '../questions/clashDays.ts';
import { surroundingsFor } from './fakes.ts';

const day = PLANTED.find(({ name }) => name.includes('hours'))?.scenario;
if (day === undefined) throw new Error('the day is gone');

let folder: string;
let plan: Plan;
const file = (name: string): string => join(folder, name);
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'why-'));
  plan = await planned(day, 60);
  writeFileSync(file('day.json'), JSON.stringify(day));
  writeFileSync(file('plan.json'), JSON.stringify(plan));
});
afterAll(() => rmSync(folder, { recursive: true }));

async function ovenward(...words: string[]) {
  const surroundings = surroundingsFor();
  const code = await run(['why', ...words], realParts, surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

test('late trays, what is full when, the bound, and what clashes', async () => {
  const { code, out, err } = await ovenward(file('day.json'), file('plan.json'), '--effort', '400');
  expect({ code, err }).toEqual({ code: 1, err: '' });
  expect(out).toContain('bun (bun-1) is ready at 05:20, 5 min after its time of 05:15. With the rest of the plan');
  expect(out).toContain('  - Ben is not there at 04:55, only from 05:00.');
  expect(out).toContain('\nBusiest by the clock: ');
  expect(out).toContain(
    '1 order and 1 limit cannot both be met, whatever the plan, even with every other order taken away and every other limit lifted. Without any one of them',
  );
  expect(out).toMatch(/What would make it fit\nTo have 10 bun for 05:15 ready on time, .*\n {2}- /);
  expect(out).toContain('  - 10 bun ready by 05:15\n  - ben works 05:00 to 09:00 (lifted: there all day, without a break)\n');
});

test('--json: the answer alone on standard output, and the same words for people', async () => {
  const { code, out, err } = await ovenward(file('day.json'), file('plan.json'), '--json', '--effort', '400');
  expect(code).toBe(1);
  const answer = whyAnswerSchema.parse(JSON.parse(out));
  expect(answer.clash).toMatchObject({ is: 'found', isMinimal: true });
  expect(answer.wouldFit?.[0]?.changes.length).toBeGreaterThan(0);
  expect(answer.why?.trays.map(({ tray }) => tray)).toEqual(['bun-1']);
  expect(err).toContain('What clashes');
});

test('a plan that breaks a rule is told so and explained no further', async () => {
  const tasks = plan.tasks.map((task) => (task.step === 'shape' ? { ...task, handsOn: [] } : task));
  writeFileSync(file('broken.json'), JSON.stringify({ ...plan, tasks }));
  const { code, out } = await ovenward(file('day.json'), file('broken.json'), '--effort', '400');
  expect(code).toBe(1);
  expect(out).toContain('HANDS_ON  Nobody is at ');
  expect(out).toMatch(/The plan breaks a rule, so that there is nothing to explain: put that right first\.\n$/);
  expect(out).not.toContain('What clashes');
});

test('a plan with every tray on time: nothing to explain but the clock', async () => {
  const easy = { ...day, orders: day.orders.slice(1) };
  writeFileSync(file('easy.json'), JSON.stringify(easy));
  const { solver: _, ...byHand } = await planned(easy, 40);
  writeFileSync(file('easy-plan.json'), JSON.stringify(byHand));
  const { code, out } = await ovenward(file('easy.json'), file('easy-plan.json'));
  expect(code).toBe(0);
  expect(out).toContain('Every tray is planned and on time.');
});

test('a day under way is refused, and so are two files from standard input', async () => {
  const underway = { ...day, underway: { now: 130, batches: [], tasks: [], decks: [] } };
  writeFileSync(file('underway.json'), JSON.stringify(underway));
  const refused = await ovenward(file('underway.json'), file('plan.json'));
  expect(refused.code).toBe(2);
  expect(refused.err).toContain('DAY_UNDER_WAY');
  expect(readFileSync(file('plan.json'), 'utf8')).toBe(JSON.stringify(plan));
  const twice = await ovenward('-', '-');
  expect(twice.err).toContain('STDIN_TWICE');
});
