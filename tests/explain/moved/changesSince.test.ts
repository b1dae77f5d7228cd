// The list of what has changed, in words, on the morning of three loaves: what is called across the room, line by line.
import { expect, test } from 'vitest';
import { changesSince } from '../../../src/explain/moved.ts';
import { happenedSchema } from '../../../src/model/happened.ts';
import type { Plan, Task } from '../../../src/model/plan.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { dayAt } from '../../../src/questions/replan/dayAt.ts';
import { threeLoaves, threeLoavesPlan } from '../../questions/replan/threeLoaves.ts';

type Out = { readonly lost: readonly string[]; readonly unwanted: readonly string[] };
const NOBODY: Out = { lost: [], unwanted: [] };

/** The day under way at a minute, with nothing told. */
function underwayAt(now: number): Scenario {
  const day = dayAt(threeLoaves, threeLoavesPlan, now, happenedSchema.parse({}));
  if (!day.ok) throw new Error('nothing was told');
  return day.scenario;
}

function shifted(task: Task, by: number): Task {
  const handsOn = task.handsOn.map((hands) => ({ ...hands, start: hands.start + by, end: hands.end + by }));
  return { ...task, start: task.start + by, end: task.end + by, handsOn };
}

/** The plan with some of its tasks otherwise. */
function planWith(change: (task: Task) => Task, rest: Partial<Plan> = {}): Plan {
  return { ...threeLoavesPlan, tasks: threeLoavesPlan.tasks.map(change), ...rest };
}

function lines(now: number, after: Plan, out: Out = NOBODY): readonly string[] {
  return changesSince(threeLoavesPlan, after, underwayAt(now), out).map(({ says }) => says);
}

const isOf =
  (tray: string, ...steps: string[]) =>
  (task: Task): boolean =>
    task.tray === tray && steps.includes(task.step);

test('nothing has changed: nothing is said', () => {
  expect(lines(50, threeLoavesPlan)).toEqual([]);
});

test('trays of which all that is left moves by as much are one line', () => {
  const after = planWith((task) => (task.start >= 100 ? shifted(task, 18) : task));
  expect(lines(90, after)).toEqual([
    'Rye 1 to 3: all 18 minutes later; the first: Rye 1, load at 05:00 instead of 04:42, Top deck.',
  ]);
  const [line] = changesSince(threeLoavesPlan, after, underwayAt(90), NOBODY);
  expect(line).toMatchObject({ kind: 'moved', minute: 120, trays: ['rye-1', 'rye-2', 'rye-3'] });
  // The bake and the cooling of each.
  expect(line?.steps).toHaveLength(6);
});

test('a batch and its trays, before it is mixed', () => {
  const plan = { ...threeLoavesPlan, tasks: threeLoavesPlan.tasks.map((task) => shifted(task, 20)) };
  const day = dayAt(threeLoaves, plan, 10, happenedSchema.parse({}));
  if (!day.ok) throw new Error('nothing was told');
  const after = { ...plan, tasks: plan.tasks.map((task) => shifted(task, 5)) };
  expect(changesSince(plan, after, day.scenario, NOBODY).map(({ says }) => says)).toEqual([
    'Rye dough, batch 1, Rye 1 to 3: all 5 minutes later; the first: Rye dough, batch 1, mix at 03:25 instead of 03:20.',
  ]);
});

test('one tray, another deck', () => {
  const place = { kind: 'deck' as const, id: 'oven/low', position: 2 };
  const after = planWith((task) =>
    isOf('rye-1', 'bake')(task) ? { ...shifted(task, 10), place } : isOf('rye-1', 'cool')(task) ? shifted(task, 10) : task,
  );
  expect(lines(90, after)).toEqual(['Rye 1: load at 04:52 instead of 04:42, Low deck instead of Top deck.']);
});

test('other hands', () => {
  const by =
    (person: string) =>
    (task: Task): Task => ({ ...task, handsOn: task.handsOn.map((hands) => ({ ...hands, person })) });
  expect(
    lines(
      50,
      planWith((task) => (isOf('rye-3', 'shape')(task) ? by('ben')(task) : task)),
    ),
  ).toEqual(['Ben instead of Ada shapes Rye 3 at 03:55.']);
  expect(
    lines(
      90,
      planWith((task) => (isOf('rye-3', 'bake')(task) ? by('ben')(task) : task)),
    ),
  ).toEqual(['Ben instead of Ada loads Rye 3 at 04:52 and takes it out.']);
});

test('one on the deck comes out later', () => {
  const after = planWith((task) =>
    isOf('rye-1', 'bake')(task) ? { ...task, end: task.end + 6 } : isOf('rye-1', 'cool')(task) ? shifted(task, 6) : task,
  );
  expect(lines(110, after)).toEqual(['Rye 1: out at 05:18 instead of 05:12.']);
});

test('lost, with a new one and without; no longer wanted; left out', () => {
  const without = (tray: string): Partial<Plan> => ({
    tasks: threeLoavesPlan.tasks.filter((task) => task.tray !== tray),
    batches: threeLoavesPlan.batches.map((batch) => ({ ...batch, trays: batch.trays.filter(({ id }) => id !== tray) })),
  });
  const gone = { ...threeLoavesPlan, ...without('rye-2') };
  expect(lines(60, gone, { lost: ['rye-2'], unwanted: [] })).toEqual(['Rye 2 is lost.']);
  expect(lines(60, { ...gone, leftOut: [{ product: 'rye', trays: 1, reasons: [] }] }, { lost: ['rye-2'], unwanted: [] })).toEqual(
    ['Rye 2 is lost, and there is no room for another.'],
  );
  expect(lines(60, gone, { lost: [], unwanted: ['rye-2'] })).toEqual(['Rye 2: no longer wanted.']);
  expect(lines(60, gone)).toEqual(['Rye 2: left out, there is no room any more.']);
  const anew = threeLoavesPlan.tasks
    .filter((task) => task.tray === 'rye-2' || task.tray === undefined)
    .map((task) => {
      const [tray, batch] = [task.tray === undefined ? {} : { tray: 'rye-4' }, 'rye-dough-2'];
      return { ...shifted(task, 80), ...tray, batch, id: task.id.replace('rye-2', 'rye-4').replace('dough-1', 'dough-2') };
    });
  const replaced = {
    ...gone,
    tasks: [...gone.tasks, ...anew],
    batches: [...gone.batches, { id: 'rye-dough-2', dough: 'rye-dough', kg: 3.6, trays: [{ id: 'rye-4', product: 'rye' }] }],
  };
  expect(lines(60, replaced, { lost: ['rye-2'], unwanted: [] })).toEqual([
    'Rye 2 is lost; a new tray, Rye 4, is begun at 04:20 and ready at 06:53.',
  ]);
});

test('set points: at another time, new, no longer', () => {
  const low = (...setPoints: Plan['decks'][number]['setPoints']): Partial<Plan> => ({
    decks: [
      { id: 'oven/top', setPoints: [] },
      { id: 'oven/low', setPoints },
    ],
  });
  const as = (rest: Partial<Plan>): Plan => planWith((task) => task, rest);
  const heat = { start: 66, end: 108, fromC: 20, toC: 230 };
  expect(lines(50, as(low(heat)))).toEqual(['Low deck: to 230 °C at 04:06 instead of 04:00.']);
  expect(lines(50, as(low()))).toEqual(['Low deck: no longer to 230 °C at 04:00.']);
  expect(
    lines(50, as(low({ start: 60, end: 102, fromC: 20, toC: 230 }, { start: 150, end: 160, fromC: 230, toC: 210 }))),
  ).toEqual(['Low deck: to 210 °C at 05:30, there at 05:40.']);
});

test('an order that is late now, and one that is on time now', () => {
  const late = threeLoavesPlan.orders.map((order, index) => (index === 0 ? { ...order, lateMinutes: 12 } : order));
  const after = planWith((task) => task, { orders: late });
  expect(lines(50, after)).toEqual(['8 Rye for 07:00: 12 minutes late.']);
  expect(changesSince(after, threeLoavesPlan, underwayAt(50), NOBODY).map(({ says }) => says)).toEqual([
    '8 Rye for 07:00: on time now.',
  ]);
});
