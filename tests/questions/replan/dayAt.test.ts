// The day so far, worked out by hand for each kind of event on a morning of three loaves (threeLoaves.ts).
import { describe, expect, test } from 'vitest';
import { judge } from '../../../src/check/judge.ts';
import { type HappenedEvent, happenedSchema, type Keep } from '../../../src/model/happened.ts';
import { scenarioSchema } from '../../../src/model/scenario.ts';
import type { UnderwayTask } from '../../../src/model/underway.ts';
import { type DayAt, dayAt } from '../../../src/questions/replan/dayAt.ts';
import { threeLoaves, threeLoavesPlan } from './threeLoaves.ts';

type Told = {
  readonly happened?: readonly HappenedEvent[];
  readonly keep?: readonly Partial<Keep>[];
  readonly movePrice?: number;
};

function lookedBack(now: number, told: Told): DayAt {
  return dayAt(threeLoaves, threeLoavesPlan, now, happenedSchema.parse(told));
}

function dayOf(now: number, ...happened: HappenedEvent[]): Extract<DayAt, { ok: true }> {
  const day = lookedBack(now, { happened });
  if (!day.ok) throw new Error(day.errors.map(({ says }) => says).join(' '));
  return day;
}

function errorsOf(now: number, ...happened: HappenedEvent[]): readonly string[] {
  const day = lookedBack(now, { happened });
  return day.ok ? [] : day.errors.map(({ code, path, says, doThis }) => `${code} ${path} ${says} ${doThis}`);
}

const nameOf = ({ tray, batch, step }: UnderwayTask): string => `${tray ?? batch}/${step}`;

function task(day: Extract<DayAt, { ok: true }>, name: string): UnderwayTask {
  const found = day.scenario.underway.tasks.find((one) => nameOf(one) === name);
  if (found === undefined) throw new Error(`nothing is said of ${name}`);
  return found;
}

/** "begun 45-55", with what it needs more and runs over where there is any. */
function stands(day: Extract<DayAt, { ok: true }>, name: string): string {
  const { state, start, end, moreMinutes, overrunMinutes } = task(day, name);
  return `${state} ${start}-${end}${moreMinutes > 0 ? ` more ${moreMinutes}` : ''}${overrunMinutes > 0 ? ` over ${overrunMinutes}` : ''}`;
}

function work(day: Extract<DayAt, { ok: true }>, name: string): readonly string[] {
  return task(day, name).handsOn.map(({ person, for: what, start, end }) => `${person} ${what} ${start}-${end}`);
}

test('the plan made by hand keeps every rule', () => {
  expect(judge(threeLoaves, threeLoavesPlan).breaches).toEqual([]);
});

describe('nothing told', () => {
  test('what has begun, what is over and what is to come', () => {
    const day = dayOf(50);
    expect(stands(day, 'rye-dough-1/mix')).toBe('ended 0-10');
    expect(stands(day, 'rye-dough-1/bulk')).toBe('ended 10-45');
    expect(stands(day, 'rye-1/shape')).toBe('begun 45-55');
    expect(stands(day, 'rye-3/shape')).toBe('planned 55-65');
    expect(work(day, 'rye-dough-1/mix')).toEqual(['ada mix 0-4']);
    expect(day.scenario.underway.batches).toEqual([
      { id: 'rye-dough-1', dough: 'rye-dough', trays: ['rye-1', 'rye-2', 'rye-3'].map((id) => ({ id, product: 'rye' })) },
    ]);
    expect(day.scenario.underway).toMatchObject({ now: 50, movePrice: 2, out: [] });
    expect(scenarioSchema.parse(day.scenario)).toEqual(day.scenario);
  });

  test('a step ends at the minute it ends, and nothing begins at now itself', () => {
    const day = dayOf(45);
    expect(stands(day, 'rye-dough-1/bulk')).toBe('begun 10-45');
    expect(stands(day, 'rye-1/shape')).toBe('planned 45-55');
    expect(stands(dayOf(55), 'rye-1/shape')).toBe('ended 45-55');
  });

  test('a bake begins with its loading, and is over when it is being unloaded', () => {
    expect(stands(dayOf(101), 'rye-1/bake')).toBe('begun 102-132');
    // Due at 132, it is still on the deck at 132.
    expect(stands(dayOf(132), 'rye-1/bake')).toBe('begun 102-133');
    expect(work(dayOf(132), 'rye-1/bake')).toEqual(['ada load 100-102', 'ada unload 133-134']);
    expect(stands(dayOf(133), 'rye-1/bake')).toBe('ended 102-132');
  });

  test('decks: moves that have begun', () => {
    expect(dayOf(60).scenario.underway.decks[1]).toEqual({ id: 'oven/low', setPoints: [] });
    expect(dayOf(81).scenario.underway.decks[1]?.setPoints).toMatchObject([{ start: 60, fromC: 20 }]);
  });
});

describe('began', () => {
  test('later: what the same person was to do next waits, what others do does not', () => {
    const day = dayOf(60, { what: 'began', task: 'rye-1/shape', at: '03:48' });
    expect(stands(day, 'rye-1/shape')).toBe('ended 48-58');
    expect(stands(day, 'rye-3/shape')).toBe('begun 58-68');
    expect(work(day, 'rye-3/shape')).toEqual(['ada shape 58-68']);
    expect(stands(day, 'rye-2/shape')).toBe('ended 45-55');
    expect(task(day, 'rye-1/proof')).toMatchObject({ state: 'begun', start: 58 });
    expect(day.told).toContain('rye-3/shape began at 03:58 instead of 03:55.');
  });

  test('so late that what follows has not begun', () => {
    const day = dayOf(56, { what: 'began', task: 'rye-1/shape', at: '03:48' });
    expect(stands(day, 'rye-1/shape')).toBe('begun 48-58');
    expect(stands(day, 'rye-3/shape')).toBe('planned 55-65');
    expect(day.told).toContain('rye-3/shape has not begun; it was to at 03:55.');
  });

  test('earlier: the rest before it ended then', () => {
    const day = dayOf(42, { what: 'began', task: 'rye-1/shape', at: '03:38' });
    expect(stands(day, 'rye-1/shape')).toBe('begun 38-48');
    expect(stands(day, 'rye-dough-1/bulk')).toBe('ended 10-38');
    expect(stands(day, 'rye-2/shape')).toBe('planned 45-55');
  });

  test('of a bake: when the tray was on the deck', () => {
    const day = dayOf(108, { what: 'began', task: 'rye-1/bake', at: '04:45' });
    expect(stands(day, 'rye-1/bake')).toBe('begun 105-135');
    expect(work(day, 'rye-1/bake')).toEqual(['ada load 103-105', 'ada unload 135-136']);
    expect(stands(day, 'rye-1/proof')).toBe('ended 55-103');
  });

  test('before the step before it: that cannot be', () => {
    expect(errorsOf(60, { what: 'began', task: 'rye-1/proof', at: '03:44' })).toEqual([
      'NOT_BEGUN_BEFORE /happened/0 rye-1/proof cannot have begun at 03:44: rye-1/shape had not begun by then. Say when rye-1/shape began, or correct the time.',
    ]);
  });

  test('what was to follow has begun too early for it: the work before was done by then', () => {
    const day = dayOf(
      70,
      { what: 'began', task: 'rye-1/shape', at: '03:48' },
      { what: 'began', task: 'rye-3/shape', at: '03:55' },
    );
    expect(stands(day, 'rye-1/shape')).toBe('ended 48-55');
    expect(work(day, 'rye-1/shape')).toEqual(['ada shape 48-55']);
    expect(day.told).toContain('rye-1/shape was done by 03:55: something that followed it is told to have begun then.');
  });

  test('two things at once by one person: that cannot be', () => {
    const errors = errorsOf(
      70,
      { what: 'began', task: 'rye-1/shape', at: '03:58' },
      { what: 'began', task: 'rye-3/shape', at: '03:50' },
      { what: 'ended', task: 'rye-3/shape', at: '04:02' },
    );
    expect(errors).toEqual([
      'ALREADY_BUSY /happened/0 rye-1/shape cannot have begun at 03:58: ada was at rye-3/shape from 03:50 to 04:02. Say when rye-3/shape ended, or correct the time.',
    ]);
  });
});

describe('ended', () => {
  test('later: the tray goes on when it is done', () => {
    const day = dayOf(62, { what: 'ended', task: 'rye-2/shape', at: '04:00' });
    expect(stands(day, 'rye-2/shape')).toBe('ended 45-60');
    expect(work(day, 'rye-2/shape')).toEqual(['ben shape 45-60']);
    expect(task(day, 'rye-2/proof')).toMatchObject({ state: 'begun', start: 60 });
  });

  test('earlier: nothing that follows begins before its time', () => {
    const day = dayOf(57, { what: 'ended', task: 'rye-2/shape', at: '03:51' });
    expect(stands(day, 'rye-2/shape')).toBe('ended 45-51');
    expect(task(day, 'rye-2/proof')).toMatchObject({ state: 'begun', start: 55 });
  });

  test('before it began: that cannot be', () => {
    expect(errorsOf(60, { what: 'ended', task: 'rye-1/shape', at: '03:40' })).toEqual([
      'NOT_BEGUN_BEFORE /happened/0 rye-1/shape cannot have ended at 03:40: by the plan and what is told, it began at 03:45. Say when rye-1/shape began as well.',
    ]);
  });
});

describe('not-yet', () => {
  test('its tray waits, the others go on', () => {
    const day = dayOf(70, { what: 'not-yet', task: 'rye-1/shape' });
    expect(stands(day, 'rye-1/shape')).toBe('planned 45-55');
    expect(stands(day, 'rye-1/proof')).toBe('planned 55-100');
    expect(stands(day, 'rye-3/shape')).toBe('ended 55-65');
  });

  test('past the minutes of its batch: as much later as now is', () => {
    // rye-2 began at 45; the others may begin by 75.
    expect(stands(dayOf(80, { what: 'not-yet', task: 'rye-1/shape' }), 'rye-1/shape')).toBe('planned 45-55 over 5');
  });

  test('none of the batch: the bulk goes on beyond its most', () => {
    const day = dayOf(
      70,
      { what: 'not-yet', task: 'rye-1/shape' },
      { what: 'not-yet', task: 'rye-2/shape' },
      { what: 'not-yet', task: 'rye-3/shape' },
    );
    // It began at 10 and may last 50: until 60.
    expect(task(day, 'rye-dough-1/bulk')).toMatchObject({ state: 'begun', start: 10, overrunMinutes: 10 });
  });

  test('a proof past its most waits for the hands that are at work', () => {
    const day = dayOf(
      120,
      { what: 'not-yet', task: 'rye-1/bake' },
      { what: 'away', person: 'ben', from: '04:50', until: '06:00' },
      { what: 'began', task: 'rye-3/bake', at: '05:01' },
    );
    // rye-1 began to proof at 55 and may until 115. Ada loads rye-3 from 119 to 121; then she has hands.
    expect(task(day, 'rye-1/proof')).toMatchObject({ state: 'begun', start: 55, overrunMinutes: 6 });
  });
});

describe('needs-more', () => {
  test('the bulk it is in', () => {
    expect(stands(dayOf(40, { what: 'needs-more', batch: 'rye-dough-1', minutes: 20 }), 'rye-dough-1/bulk')).toBe(
      'begun 10-45 more 20',
    );
  });

  test('the proof a tray is in, or will be in', () => {
    expect(task(dayOf(70, { what: 'needs-more', tray: 'rye-1', minutes: 15 }), 'rye-1/proof').moreMinutes).toBe(15);
    expect(task(dayOf(50, { what: 'needs-more', tray: 'rye-1', minutes: 15 }), 'rye-1/proof').moreMinutes).toBe(15);
  });

  test('too late: told what to add', () => {
    expect(errorsOf(50, { what: 'needs-more', batch: 'rye-dough-1', minutes: 20 })).toEqual([
      'NOTHING_TO_WAIT_FOR /happened/0 By the plan rye-dough-1/bulk ended at 03:45, and rye-1/shape began at 03:45. If it has not begun, add { what: not-yet, task: rye-1/shape }.',
    ]);
  });
});

describe('away', () => {
  test('what the person was to do has not begun; the absence is a break', () => {
    const day = dayOf(60, { what: 'away', person: 'ben', from: '03:40', until: '04:10' });
    expect(stands(day, 'rye-2/shape')).toBe('planned 45-55');
    expect(day.scenario.people?.[1]?.breaks).toEqual([{ from: '03:40', until: '04:10' }]);
    expect(day.told).toContain('rye-2/shape has not begun; it was to at 03:45.');
  });

  test('work under way is finished first', () => {
    const day = dayOf(52, { what: 'away', person: 'ben', from: '03:51', until: '04:10' });
    expect(stands(day, 'rye-2/shape')).toBe('begun 45-55');
    expect(day.scenario.people?.[1]?.breaks).toEqual([{ from: '03:55', until: '04:10' }]);
    expect(day.told).toContain('Ben is taken to finish rye-2/shape first, until 03:55.');
  });

  test('to the end of the day, and from its beginning on: not there at all', () => {
    expect(dayOf(20, { what: 'away', person: 'ben', from: '03:30' }).scenario.people?.[1]?.breaks).toEqual([
      { from: '03:30', until: '12:00' },
    ]);
    expect(dayOf(20, { what: 'away', person: 'ben', from: '02:00' }).scenario.people?.map(({ id }) => id)).toEqual(['ada']);
  });
});

describe('out-of-use', () => {
  test('a deck: what cannot be out before is lost, what can is not', () => {
    const day = dayOf(110, { what: 'out-of-use', deck: 'oven/top', from: '05:00', until: '07:00' });
    expect(day.lost).toEqual(['rye-1', 'rye-2']);
    expect(day.scenario.underway.batches[0]?.trays).toEqual([{ id: 'rye-3', product: 'rye' }]);
    expect(day.scenario.underway.out).toEqual([{ kind: 'deck', id: 'oven/top', from: 120, until: 240 }]);
    expect(day.told).toContain('Rye 1 cannot be out of Top deck before it goes out of use at 05:00, and counts as lost.');
    expect(dayOf(110, { what: 'out-of-use', deck: 'oven/top', from: '05:12' }).lost).toEqual([]);
  });

  test('a deck before now: what was on it is lost, what was to go on it has not', () => {
    const day = dayOf(118, { what: 'out-of-use', deck: 'oven/top', from: '04:45', until: '05:10' });
    expect(day.lost).toEqual(['rye-1', 'rye-2']);
    expect(stands(day, 'rye-3/bake')).toBe('begun 112-142');
    const earlier = dayOf(118, { what: 'out-of-use', deck: 'oven/top', from: '04:30', until: '05:10' });
    expect(earlier.lost).toEqual([]);
    // The proof may last until 115. The low deck is at 230 C and has room: loaded from 118 on.
    expect(stands(earlier, 'rye-1/proof')).toBe('begun 55-118 over 3');
  });

  test('a proofer: nothing new goes in, what is in it stays', () => {
    const day = dayOf(60, { what: 'out-of-use', proofer: 'proofer', from: '03:50', until: '04:10' });
    // Shaped at 55 and may not wait; the proofer is back at 70.
    expect(stands(day, 'rye-1/shape')).toBe('ended 45-55 over 15');
    expect(stands(day, 'rye-1/proof')).toBe('planned 55-100');
    expect(stands(dayOf(62, { what: 'out-of-use', proofer: 'proofer', from: '04:00' }), 'rye-1/proof')).toBe('begun 55-100');
  });

  test('a mixer: the batch is mixed again', () => {
    const day = dayOf(8, { what: 'out-of-use', mixer: 'spiral', from: '03:05', until: '03:20' });
    expect(stands(day, 'rye-dough-1/mix')).toBe('planned 0-10');
    expect(day.told).toContain('Rye dough, batch 1 was being mixed when spiral went out of use at 03:05; it is mixed again.');
  });
});

describe('orders', () => {
  test('a new one and a changed one', () => {
    const day = dayOf(
      50,
      { what: 'ordered', product: 'rye', pieces: 4, readyBy: '09:00' },
      { what: 'order-changed', product: 'rye', readyBy: '07:00', newReadyBy: '07:30' },
    );
    expect(day.scenario.orders).toEqual([
      { product: 'rye', pieces: 8, readyBy: '07:30' },
      { product: 'rye', pieces: 4, readyBy: '08:00' },
      { product: 'rye', pieces: 4, readyBy: '09:00' },
    ]);
    expect(day.unwanted).toEqual([]);
  });

  test('fewer: the tray that is farthest behind is no longer wanted', () => {
    const day = dayOf(50, { what: 'order-cancelled', product: 'rye', readyBy: '08:00' });
    expect(day.unwanted).toEqual(['rye-3']);
    expect(day.scenario.underway.tasks.some(({ tray }) => tray === 'rye-3')).toBe(false);
    expect(day.told).toContain('Rye 3 is no longer wanted; it had not begun.');
    const late = dayOf(70, { what: 'order-changed', product: 'rye', readyBy: '07:00', pieces: 4 });
    expect(late.unwanted).toEqual(['rye-3']);
    expect(late.told).toContain('Rye 3 is no longer wanted, and it has begun: sell it or give it away.');
  });
});

test('lost: the tray and all its steps are gone, its batch is not', () => {
  const day = dayOf(120, { what: 'lost', tray: 'rye-2' });
  expect(day.lost).toEqual(['rye-2']);
  expect(day.scenario.underway.tasks.filter(({ tray }) => tray === 'rye-2')).toEqual([]);
  expect(stands(day, 'rye-dough-1/mix')).toBe('ended 0-10');
  expect(day.scenario.orders).toEqual(threeLoaves.orders);
});

test('a batch without a tray left is gone as a whole', () => {
  const day = dayOf(60, { what: 'lost', tray: 'rye-1' }, { what: 'lost', tray: 'rye-2' }, { what: 'lost', tray: 'rye-3' });
  expect(day.scenario.underway).toMatchObject({ batches: [], tasks: [] });
});

test('decisions: of what has not begun, and no time that is past', () => {
  const day = lookedBack(60, {
    happened: [{ what: 'not-yet', task: 'rye-1/shape' }],
    keep: [{ tray: 'rye-1', keeps: ['time', 'people'] }, { task: 'rye-2/bake' }],
    movePrice: 7,
  });
  if (!day.ok) throw new Error('it can be');
  expect(task(day, 'rye-1/shape').keeps).toEqual(['people']);
  expect(task(day, 'rye-1/bake').keeps).toEqual(['time', 'people']);
  expect(task(day, 'rye-2/bake').keeps).toEqual(['time', 'place', 'people']);
  expect(task(day, 'rye-2/shape').keeps).toEqual([]);
  expect(day.scenario.underway.movePrice).toBe(7);
  expect(day.told).toContain('rye-1/shape cannot keep its time: it is past.');
});

test('told again later: what was known stays as it happened', () => {
  const first = dayOf(60, { what: 'began', task: 'rye-1/shape', at: '03:48' });
  const moved = new Map([
    ['rye-1/shape', [48, 58]],
    ['rye-3/shape', [58, 68]],
    ['rye-1/proof', [58, 100]],
    ['rye-3/proof', [68, 110]],
  ]);
  const tasks = threeLoavesPlan.tasks.map((one) => {
    const [start = one.start, end = one.end] = moved.get(one.id) ?? [];
    const shift = start - one.start;
    return {
      ...one,
      start,
      end,
      handsOn: one.handsOn.map((hands) => ({ ...hands, start: hands.start + shift, end: hands.end + shift })),
    };
  });
  const second = dayAt(
    first.scenario,
    { ...threeLoavesPlan, tasks },
    75,
    happenedSchema.parse({ happened: [{ what: 'needs-more', tray: 'rye-1', minutes: 5 }] }),
  );
  if (!second.ok) throw new Error(second.errors.map(({ says }) => says).join(' '));
  expect(stands(second, 'rye-1/shape')).toBe('ended 48-58');
  expect(stands(second, 'rye-3/shape')).toBe('ended 58-68');
  expect(task(second, 'rye-1/proof')).toMatchObject({ state: 'begun', start: 58, moreMinutes: 5 });
});
