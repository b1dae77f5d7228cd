// The fingerprint: the same for the same scenario however it is written, another for any other.
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { fingerprint } from '../../src/model/fingerprint.ts';
import { type ScenarioInput, scenarioSchema } from '../../src/model/scenario.ts';

const input: ScenarioInput = {
  scenario: 1,
  name: 'One tray',
  date: '2026-05-16',
  timeZone: 'UTC',
  day: { from: '03:00', until: '09:00' },
  equipment: {},
  doughs: [{ id: 'plain', steps: [{ do: 'mix', minutes: 10 }] }],
  products: [{ id: 'roll', dough: 'plain', pieceG: 60, piecesPerTray: 20, steps: [{ do: 'shape', minutesPerTray: 5 }] }],
  orders: [{ product: 'roll', pieces: 20, readyBy: '08:00' }],
};

describe('fingerprint', () => {
  it('is sha256: and 64 hexadecimal digits', () => {
    expect(fingerprint(scenarioSchema.parse(input))).toMatch(/^sha256:[0-9a-f]{64}$/);
  });

  it('leaves the order of keys and stated defaults alone', () => {
    const turned = Object.fromEntries(Object.entries(input).reverse());
    const stated = { ...input, equipment: { retarders: [], proofers: [], ovens: [] }, goals: { lateTrayMinute: 20 } };
    const own = fingerprint(scenarioSchema.parse(input));
    expect(fingerprint(scenarioSchema.parse(turned))).toBe(own);
    expect(fingerprint(scenarioSchema.parse(stated))).toBe(own);
  });

  it('is another when a number, a name or the order of a list is another', () => {
    const orders = [
      { product: 'roll', pieces: 20, readyBy: '08:00' },
      { product: 'roll', pieces: 20, readyBy: '07:00' },
    ];
    const variants = [
      input,
      { ...input, name: 'One tray more' },
      { ...input, orders: [{ product: 'roll', pieces: 21, readyBy: '08:00' }] },
      { ...input, orders },
      { ...input, orders: [...orders].reverse() },
      { ...input, people: [] },
    ];
    const all = variants.map((variant) => fingerprint(scenarioSchema.parse(variant)));
    expect(new Set(all).size).toBe(variants.length);
  });

  it('is SHA-256 of JSON with sorted keys', () => {
    const scenario = scenarioSchema.parse(input);
    const text =
      '{"date":"2026-05-16","day":{"from":"03:00","until":"09:00"},' +
      '"doughs":[{"allergens":[],"id":"plain","lossPercent":0,"shapeWithin":30,"steps":[{"do":"mix","minutes":10,"waitUpTo":0}]}],' +
      '"equipment":{"ovens":[],"proofers":[],"retarders":[]},' +
      '"goals":{"aim":"finish-early","finishMinute":1,"lateTrayMinute":20,"leftOutTray":5000,"temperatureChange":10},' +
      '"name":"One tray","orders":[{"pieces":20,"product":"roll","readyBy":"08:00"}],' +
      '"products":[{"allergens":[],"coldFilling":false,"dough":"plain","id":"roll","pieceG":60,"piecesPerTray":20,' +
      '"steps":[{"do":"shape","minutesPerTray":5,"waitUpTo":0}]}],"scenario":1,"timeZone":"UTC"}';
    expect(fingerprint(scenario)).toBe(`sha256:${createHash('sha256').update(text).digest('hex')}`);
  });
});
