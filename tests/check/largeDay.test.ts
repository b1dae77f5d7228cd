// A large day, 500 trays and 20 people, is judged in well under a second.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import type { WrittenPlan, WrittenTask } from '../../src/model/writtenPlan.ts';

const PEOPLE = 20;
const TRAYS_EACH = 25;

const scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'Large day',
  date: '2026-01-20',
  timeZone: 'UTC',
  day: { from: '00:00', until: '23:00' },
  equipment: {
    ovens: [
      {
        id: 'oven',
        heatUpCPerMinute: 5,
        coolDownCPerMinute: 2,
        decks: Array.from({ length: PEOPLE }, (_, deck) => ({ id: `d${deck}`, trays: 2, startsAtC: 220 })),
      },
    ],
    proofers: [{ id: 'proofer', shelves: PEOPLE, traysPerShelf: 4, temperatureC: 30 }],
    bench: { places: PEOPLE },
    coolingRack: { trays: PEOPLE },
  },
  people: Array.from({ length: PEOPLE }, (_, person) => ({ id: `p${person}`, from: '00:00', until: '23:00' })),
  doughs: [{ id: 'dough', shapeWithin: 1380, steps: [{ do: 'bulk', minutes: 60 }] }],
  products: [
    {
      id: 'roll',
      dough: 'dough',
      pieceG: 50,
      piecesPerTray: 10,
      steps: [
        { do: 'shape', minutesPerTray: 6 },
        { do: 'proof', minutes: 90 },
        { do: 'bake', minutes: 30, temperatureC: [210, 230], load: 1, unload: 1 },
        { do: 'cool', minutes: 39 },
        { do: 'finish', minutesPerTray: 5 },
      ],
    },
  ],
  orders: [{ product: 'roll', pieces: PEOPLE * TRAYS_EACH * 10, readyBy: '23:00' }],
});

/** Tray number k of a person begins 45 minutes after the one before; each person has a deck, a bench place and four shelves. */
function trayOf(person: number, k: number): readonly WrittenTask[] {
  const at = 60 + 45 * k;
  const name = `p${person}`;
  const shared = { tray: `roll-${person}-${k}`, product: 'roll', batch: 'dough-1' };
  const by = (kind: 'shape' | 'load' | 'unload' | 'finish', start: number, end: number) => ({
    person: name,
    for: kind,
    start,
    end,
  });
  const position = person + 1;
  const shelf = person * 4 + (k % 4) + 1;
  const bench = { kind: 'bench' as const, id: 'bench', position };
  return [
    { step: 'shape', ...shared, start: at, end: at + 6, place: bench, handsOn: [by('shape', at, at + 6)] },
    {
      step: 'proof',
      ...shared,
      start: at + 6,
      end: at + 96,
      place: { kind: 'shelf', id: 'proofer', position: shelf },
      handsOn: [],
    },
    {
      step: 'bake',
      ...shared,
      start: at + 97,
      end: at + 127,
      place: { kind: 'deck', id: `oven/d${person}`, position: 1 },
      handsOn: [by('load', at + 96, at + 97), by('unload', at + 127, at + 128)],
    },
    {
      step: 'cool',
      ...shared,
      start: at + 128,
      end: at + 167,
      place: { kind: 'rack', id: 'cooling-rack', position },
      handsOn: [],
    },
    { step: 'finish', ...shared, start: at + 167, end: at + 172, place: bench, handsOn: [by('finish', at + 167, at + 172)] },
  ];
}

const plan: WrittenPlan = {
  tasks: [
    { step: 'bulk', batch: 'dough-1', start: 0, end: 60, handsOn: [] },
    ...Array.from({ length: PEOPLE }, (_, person) =>
      Array.from({ length: TRAYS_EACH }, (_, k) => trayOf(person, k)).flat(),
    ).flat(),
  ],
  decks: [],
};

describe('a large day', () => {
  it('is judged, and quickly', () => {
    const begun = process.cpuUsage();
    const { breaches, figures } = judge(scenario, plan);
    const busyMs = process.cpuUsage(begun).user / 1000;
    expect(breaches).toEqual([]);
    expect(figures.finishMinute).toBe(60 + 45 * 24 + 172);
    expect(busyMs).toBeLessThan(1000);
  });
});
