// Tests of src/draw/whatToDo.ts: sentences, merging, order, and that no task is forgotten.
import { describe, expect, test } from 'vitest';
import { whatToDo } from '../../src/draw/whatToDo.ts';
import { planOfDay } from './bakeryDay.ts';
import { AUTUMN_NIGHT, CENTRAL, LATE, MORNING, NOBODY, RACK, SPRING_NIGHT } from './fixtures/days.ts';
import { smallPlan } from './smallPlan.ts';

const deck = (position: number, id = 'oven/top') => ({ kind: 'deck' as const, id, position });
const hands = (person: string, start: number, end: number, what: 'mix' | 'shape' | 'load' | 'unload') => ({
  person,
  start,
  end,
  for: what,
});

function says(plan: Parameters<typeof whatToDo>[0]): readonly string[] {
  return whatToDo(plan).map(({ clock, who, what }) =>
    `${clock} ${who === null ? '' : `${who.name}: `}${what}`.replaceAll('\u00a0', ' '),
  );
}

describe('sentences', () => {
  test('a mix names kilograms, bowl, end, and when the hands are free', () => {
    const plan = smallPlan([
      {
        step: 'mix',
        start: 5,
        end: 17,
        place: { kind: 'bowl', id: 'spiral', position: 1 },
        handsOn: [hands('rosa', 5, 9, 'mix')],
      },
    ]);
    expect(says(plan)).toContain('03:05 Rosa: mix 8.2 kg of Wheat dough in Spiral, until 03:17; hands free at 03:09');
  });

  test('two trays loaded one after the other are one line with both times out', () => {
    const plan = smallPlan(
      [
        {
          step: 'bake',
          product: 'tin',
          tray: 'tin-1',
          start: 152,
          end: 189,
          place: deck(1),
          handsOn: [hands('rosa', 151, 152, 'load')],
        },
        {
          step: 'bake',
          product: 'tin',
          tray: 'tin-2',
          start: 153,
          end: 190,
          place: deck(2),
          handsOn: [hands('rosa', 152, 153, 'load')],
        },
      ],
      { decks: [{ id: 'oven/top', setPoints: [{ start: 70, end: 112, fromC: 20, toC: 230 }] }] },
    );
    expect(says(plan)).toContain('05:31 Rosa: 2 trays of Seeded tin into Top deck, 230 °C, out at 06:09 and 06:10');
    expect(says(plan)).toContain('04:10 heat Top deck from 20 °C to 230 °C, there at 04:52');
  });

  test('trays loaded by two people, or on two trips, stay two lines', () => {
    const plan = smallPlan([
      {
        step: 'bake',
        product: 'tin',
        tray: 'tin-1',
        start: 152,
        end: 189,
        place: deck(1),
        handsOn: [hands('rosa', 151, 152, 'load')],
      },
      {
        step: 'bake',
        product: 'tin',
        tray: 'tin-2',
        start: 153,
        end: 190,
        place: deck(2),
        handsOn: [hands('teo', 152, 153, 'load')],
      },
      {
        step: 'bake',
        product: 'tin',
        tray: 'tin-3',
        start: 202,
        end: 239,
        place: deck(1),
        handsOn: [hands('rosa', 201, 202, 'load')],
      },
    ]);
    expect(says(plan).filter((line) => line.includes('into Top deck'))).toHaveLength(3);
  });

  test('a rack pushed in whole is one line that names every product', () => {
    const tray = (tray: string, product: string, position: number) => ({
      step: 'bake' as const,
      product,
      tray,
      start: 100,
      end: 140,
      place: deck(position, 'rack/chamber'),
      handsOn: position === 1 ? [hands('rosa', 98, 100, 'load'), hands('rosa', 140, 142, 'unload')] : [],
    });
    const plan = smallPlan([tray('tin-1', 'tin', 1), tray('tin-2', 'tin', 2), tray('roll-1', 'roll', 3)]);
    expect(says(plan)).toContain(
      '04:38 Rosa: 2 trays of Seeded tin and 1 tray of Milk roll into Rack oven, 230 °C, out at 05:20',
    );
    expect(says(plan)).toContain('05:20 Rosa: take 2 trays of Seeded tin and 1 tray of Milk roll out of Rack oven, ready');
    expect(whatToDo(plan).filter(({ does }) => does === 'load')).toHaveLength(1);
  });

  test('shaping in a row is one line; another job in between makes it two', () => {
    const shape = (tray: string, start: number) => ({
      step: 'shape' as const,
      product: 'tin',
      tray,
      start,
      end: start + 10,
      place: { kind: 'bench' as const, id: 'bench', position: 1 },
      handsOn: [hands('rosa', start, start + 10, 'shape')],
    });
    expect(says(smallPlan([shape('tin-1', 60), shape('tin-2', 70)]))).toContain(
      '04:00 Rosa: shape 2 trays of Seeded tin, done 04:20, ready 04:20',
    );
    expect(says(smallPlan([shape('tin-1', 60), shape('tin-2', 75)])).filter((line) => line.includes('shape'))).toHaveLength(2);
  });

  test('a change of heat says up or down, and is no heat-up', () => {
    const setPoints = [
      { start: 0, end: 42, fromC: 20, toC: 230 },
      { start: 200, end: 215, fromC: 230, toC: 200 },
    ];
    const doings = whatToDo(smallPlan([], { decks: [{ id: 'oven/top', setPoints }] })).filter(({ does }) => does !== 'break');
    expect(doings.map(({ does }) => does)).toEqual(['heat', 'change heat']);
    expect(doings[1]?.what).toBe('turn Top deck down from 230\u00a0°C to 200\u00a0°C, there at 06:35');
  });

  test('carrying between rooms that nobody has hands for is told, and folding tells its own', () => {
    const cold = { kind: 'retarder' as const, id: 'cold', position: 1 };
    const plan = smallPlan([
      { step: 'mix', start: 0, end: 10 },
      { step: 'bulk', start: 10, end: 60, place: cold },
      { step: 'fold', start: 60, end: 65 },
      { step: 'bulk', start: 65, end: 100, place: cold },
      { step: 'shape', product: 'tin', tray: 'tin-1', start: 100, end: 110 },
      { step: 'retard', product: 'tin', tray: 'tin-1', start: 110, end: 300, place: cold },
      {
        step: 'proof',
        product: 'tin',
        tray: 'tin-1',
        start: 300,
        end: 360,
        place: { kind: 'shelf', id: 'proofer', position: 1 },
      },
    ]);
    expect(says(plan).filter((line) => !line.includes('break'))).toEqual([
      '03:00 mix 8.2 kg of Wheat dough, until 03:10',
      '03:10 Wheat dough to Cold room',
      '04:00 fold Wheat dough from Cold room, done 04:05, then back into Cold room',
      '04:40 shape 1 tray of Seeded tin, done 04:50, into Cold room',
      '04:40 Wheat dough from Cold room to the bench',
      '08:00 1 tray of Seeded tin from Cold room to Proofer',
    ]);
  });

  test('breaks are told with their end', () => {
    expect(says(smallPlan([]))).toEqual(['07:00 Rosa: break until 07:20']);
  });
});

describe('nights on which the clocks change', () => {
  test('an hour that comes twice is told apart', () => {
    const first = whatToDo(planOfDay(AUTUMN_NIGHT)).map(({ what }) => what);
    expect(first.some((what) => what.includes('(first)') || what.includes('(second)'))).toBe(true);
  });

  test('the hour that does not come is never named', () => {
    const doings = whatToDo(planOfDay(SPRING_NIGHT));
    const words = doings.flatMap(({ clock, what }) => [clock, ...(what.match(/\d\d:\d\d/g) ?? [])]);
    expect(words.length).toBeGreaterThan(20);
    expect(words.filter((time) => time.startsWith('01:'))).toEqual([]);
  });
});

describe.each([
  ['morning', MORNING],
  ['nobody', NOBODY],
  ['rack', RACK],
  ['late', LATE],
  ['central', CENTRAL],
] as const)('%s', (_, day) => {
  const plan = planOfDay(day);
  const doings = whatToDo(plan);

  test('every piece of hands-on work of the plan is in the list, at its minute and for its person', () => {
    const handsOn = plan.tasks.flatMap((task) => task.handsOn.map((part) => ({ task, part })));
    const told = handsOn.filter(({ task, part }) =>
      doings.some(
        (doing) =>
          doing.taskIds.includes(task.id) &&
          doing.does === part.for &&
          (doing.who?.id ?? '') === part.person &&
          doing.minute <= part.start &&
          part.end <= doing.untilMinute,
      ),
    );
    expect(told).toHaveLength(handsOn.length);
  });

  test('every bake is told twice, in and out, every mix once', () => {
    const of = (does: string) => doings.filter((doing) => doing.does === does).flatMap(({ taskIds }) => taskIds);
    const bakes = plan.tasks.filter(({ step }) => step === 'bake').map(({ id }) => id);
    expect(of('load').sort()).toEqual([...bakes].sort());
    expect(
      of('unload')
        .filter((id) => id.endsWith('/bake'))
        .sort(),
    ).toEqual([...bakes].sort());
    expect(of('mix').sort()).toEqual(
      plan.tasks
        .filter(({ step }) => step === 'mix')
        .map(({ id }) => id)
        .sort(),
    );
  });

  test('it runs by the clock', () => {
    const minutes = doings.map(({ minute }) => minute);
    expect(minutes).toEqual([...minutes].sort((a, b) => a - b));
  });
});
