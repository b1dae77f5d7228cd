// The busiest place by the clock, counted again from the tasks, and on a day worked out by hand.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { busiestOf } from '../../src/explain/busiest.ts';
import { busiestSchema } from '../../src/model/why.ts';
import { bakery } from '../compile/bakery.ts';
import { anyScenario } from '../laws/anyScenario.ts';
import { planned } from '../laws/planned.ts';
import { isThere, recounted } from './usesRecounted.ts';

describe('the busiest place or person', () => {
  it('every span said to be full is full, and nothing else is; shares are as recounted', async () => {
    await fc.assert(
      fc.asyncProperty(anyScenario, async (scenario) => {
        const plan = await planned(scenario, 5);
        const { resources } = busiestSchema.parse(busiestOf(scenario, plan));
        for (const { kind, id, room, full, firstUse, lastUse, usedMinutes, openMinutes } of resources) {
          const count = recounted(scenario, plan, kind, id);
          const isFull = (minute: number): boolean => full.some(({ start, end }) => minute >= start && minute < end);
          count.forEach((held, minute) => {
            expect(isFull(minute), `${kind} ${id} at ${minute}`).toBe(room > 0 && held >= room);
          });
          const used = [...count.keys()].filter((minute) => (count[minute] ?? 0) > 0);
          expect([firstUse, lastUse]).toEqual(used.length === 0 ? [null, null] : [used[0], (used[used.length - 1] ?? 0) + 1]);
          expect(usedMinutes).toBe(count.reduce((sum, held) => sum + held, 0));
          const between = [...count.keys()].slice(firstUse ?? 0, lastUse ?? 0);
          const open = kind === 'person' ? between.filter((minute) => isThere(scenario, id, minute)) : between;
          expect(openMinutes).toBe(open.length * room);
        }
      }),
      { numRuns: 12 },
    );
  });

  // One person: mixing 10, then shaping four trays of 10 each on a bench of two: busy 50 minutes of 50, the bench 40 of 80.
  it('is the only person on a day of hand work', async () => {
    const day = bakery({
      breads: [{ id: 'bun', dough: 'white', pieceG: 100, piecesPerTray: 10, pieces: 40 }],
      people: [{ id: 'ana', name: 'Ana', from: '03:00', until: '12:00' }],
      equipment: { bench: { places: 2 } },
    });
    const { busiest, says, resources } = busiestOf(day, await planned(day, 20));
    expect(busiest).toEqual({ kind: 'person', id: 'ana' });
    expect(says).toBe('Busiest by the clock: Ana is at work 100 % of the time between 03:00 and 03:50, breaks not counted.');
    expect(resources.find(({ kind }) => kind === 'bench')?.says).toBe(
      'The bench is never full; in use 50 % of the time between 03:10 and 03:50.',
    );
  });

  it('is nobody where nothing is limited', async () => {
    const day = bakery({ breads: [{ id: 'bun', dough: 'white', pieceG: 100, piecesPerTray: 10, pieces: 40 }] });
    const { busiest, says } = busiestOf(day, await planned(day, 20));
    expect(busiest).toBeNull();
    expect(says).toBe('No place and nobody is short: nothing the plan uses is limited.');
  });
});
