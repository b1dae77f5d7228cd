// The calendar of a plan, read back by ical.js, which shares no code with what writes it, and compared with the plan.
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { calendarOf } from '../../src/api/calendar.ts';
import { clockChanges, clockOfPlan } from '../../src/model/clock.ts';
import type { Plan } from '../../src/model/plan.ts';
import { smallPlan } from '../draw/smallPlan.ts';
import { planned } from '../laws/planned.ts';
import { scenarioNamed } from '../scenarios/allScenarios.ts';

const STAMP = '2026-05-15T18:30:00.000Z';

type Event = {
  readonly uid: string;
  readonly sequence: number;
  readonly says: string;
  readonly start: number;
  readonly end: number;
  readonly alarms: readonly number[];
};

function eventsIn(text: string): readonly Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    const start = event.startDate.toJSDate().getTime();
    return {
      uid: event.uid,
      sequence: event.sequence,
      says: event.summary,
      start,
      end: event.endDate.toJSDate().getTime(),
      alarms: component.getAllSubcomponents('valarm').map((alarm) => {
        expect(alarm.getFirstPropertyValue('action')).toBe('DISPLAY');
        expect(alarm.getFirstPropertyValue('description')).toBe(event.summary);
        const trigger = alarm.getFirstPropertyValue('trigger');
        if (!(trigger instanceof ICAL.Duration)) throw new Error('an alarm without a time before its event');
        return start + trigger.toSeconds() * 1000;
      }),
    };
  });
}

/** Every instant of oven work and of set points that move, once each, as the plan itself writes them. */
function instantsIn({ tasks, decks, day }: Plan): readonly string[] {
  const told = (word: string, at: number) => `${word} ${new Date(at).toISOString()}`;
  const bakes = tasks.filter(({ step }) => step === 'bake');
  const dayStart = Date.parse(day.startsAt);
  return [
    ...new Set([
      ...bakes.map(({ startsAt }) => told('in', Date.parse(startsAt))),
      ...bakes.map(({ endsAt }) => told('out', Date.parse(endsAt))),
      ...decks.flatMap(({ setPoints }) =>
        setPoints.filter(({ fromC, toC }) => fromC !== toC).map(({ start }) => told('heat', dayStart + start * 60_000)),
      ),
    ]),
  ].sort();
}

/** Loading ends when the bake begins, taking out begins when it ends: design of a bake. */
function instantsOf({ says, start, end }: Event): string {
  if (/ into .* out (at|from) /.test(says)) return `in ${new Date(end).toISOString()}`;
  return `${/ake .* out of /.test(says) ? 'out' : 'heat'} ${new Date(start).toISOString()}`;
}

test.each(['only-what-must-be-said', 'one-pair-of-hands', 'rack-oven', 'night-the-clocks-go-forward'])(
  '%s: every oven action at its instant, with an alarm three minutes before',
  async (name) => {
    const plan = await planned(scenarioNamed(name), 3);
    const events = eventsIn(calendarOf(plan, STAMP));
    expect([...new Set(events.map(instantsOf))].sort()).toEqual(instantsIn(plan));
    const trays = events.flatMap(({ says }) => (says.includes(' into ') ? [...says.matchAll(/(\d+) trays? of/g)] : []));
    const bakes = plan.tasks.filter(({ step }) => step === 'bake').length;
    expect(bakes).toBeGreaterThan(2);
    expect(trays.reduce((sum, [, count]) => sum + Number(count), 0)).toBe(bakes);
    for (const { start, alarms } of events) expect(alarms).toEqual([start - 180_000]);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  },
);

test('over the night the clocks go forward, instants are those of the plan', async () => {
  const plan = await planned(scenarioNamed('night-the-clocks-go-forward'), 3);
  const change = clockChanges(clockOfPlan(plan))[0]?.minute ?? Number.NaN;
  const bakes = plan.tasks.filter(({ step, start }) => step === 'bake' && start > change);
  expect(bakes.length).toBeGreaterThan(0);
  const text = calendarOf(plan, STAMP);
  for (const { startsAt } of bakes) {
    // The plan writes them with the offset of summer; the calendar in UTC, form 2 of RFC 5545, section 3.3.5.
    expect(startsAt).toMatch(/\+02:00$/);
    const utc = new Date(startsAt).toISOString().replace(/[-:]|\.000/g, '');
    expect(text).toMatch(new RegExp(`DT(START|END):${utc}\r\n`));
  }
});

const bake = { step: 'bake', product: 'tin', tray: 'tin-1', start: 60, end: 90 } as const;
const place = { kind: 'deck', id: 'oven/top', position: 1 } as const;
const loaf = '\u{1f956}';
const HOSTILE = `Tin; BEGIN:VEVENT, \\n\r\nX-BAD:1\u0000\u0007 <script> \ud800 — bröd ${`ö${loaf}`.repeat(80)}`;
const setPoints = [{ start: 10, end: 46, fromC: 20, toC: 200 }];

function oneBake(start: number, rest: Partial<Plan> = {}): Plan {
  return smallPlan([{ ...bake, place, start, end: start + 30 }], { decks: [{ id: 'oven/top', setPoints }], ...rest });
}

function namedPlan(name: string): Plan {
  const plan = oneBake(60);
  const products = plan.bakehouse.products.map((product) => ({ ...product, name }));
  return { ...plan, scenario: { ...plan.scenario, name }, bakehouse: { ...plan.bakehouse, products } };
}

test('names cannot break out of their line, and no line is longer than 75 octets', () => {
  const text = calendarOf(namedPlan(HOSTILE), STAMP);
  const lines = text.split('\r\n');
  expect(lines.join('')).not.toMatch(/[\r\n]/);
  // RFC 5545, section 3.1: lines of text should not be longer than 75 octets, the line break not counted.
  expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
  expect(lines.length).toBeGreaterThan(20);
  expect(lines.filter((line) => line === 'BEGIN:VEVENT')).toHaveLength(3);
  expect(lines.some((line) => line.startsWith('X-BAD'))).toBe(false);
  const shown = HOSTILE.replace('\u0000\u0007', '').replace('\ud800', '\ufffd').replace('\r\n', '\n');
  // NAME is text too (RFC 7986, section 5.1); ical.js does not know it and leaves its escapes.
  const name = String(new ICAL.Component(ICAL.parse(text)).getFirstPropertyValue('name'));
  expect(name.replace(/\\(.)/g, (_, letter) => (letter === 'n' ? '\n' : letter))).toBe(`${shown}, 2026-05-16`);
  const [heat, ...oven] = eventsIn(text);
  expect(heat?.says).toMatch(/^Heat /);
  for (const { says } of oven) expect(says).toContain(shown);
});

test('planned anew, the same action keeps its id, and the later stamp counts more', () => {
  const before = eventsIn(calendarOf(oneBake(60), STAMP));
  const after = eventsIn(calendarOf(oneBake(75), '2026-05-16T04:00:00.000Z'));
  expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
  expect(after.map(({ start }, index) => start - (before[index]?.start ?? 0))).toEqual([0, 900_000, 900_000]);
  for (const [index, { sequence }] of after.entries()) expect(sequence).toBeGreaterThan(before[index]?.sequence ?? Number.NaN);
});

test('another day has other ids; the same plan at the same time gives the same bytes', () => {
  const plan = oneBake(60);
  const other = { ...plan, scenario: { ...plan.scenario, date: '2026-05-17' } };
  const ids = new Set(eventsIn(calendarOf(plan, STAMP)).map(({ uid }) => uid));
  for (const { uid } of eventsIn(calendarOf(other, STAMP))) expect(ids.has(uid)).toBe(false);
  expect(calendarOf(plan, STAMP)).toBe(calendarOf(plan, STAMP));
});
