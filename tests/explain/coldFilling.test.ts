import { describe, expect, it } from 'vitest';
import { coldFilling } from '../../src/explain/cautions/coldFilling.ts';
import { cooling } from '../../src/explain/cautions/cooling.ts';
import { at, dayWith, dayWithProduct, trayTask } from './cautionDay.ts';

const day = dayWithProduct({ coldFilling: true });
const inCabinet = (id: string) => ({ place: { kind: 'retarder' as const, id, position: 1 } });

describe('coldFilling', () => {
  it('counts four hours from 06:10 to 10:10', () => {
    // FDA Food Code 3-501.19: at most four hours from 41 F or below; the times are made up.
    const tasks = [trayTask('shape', at('06:10'), at('06:20')), trayTask('proof', at('06:20'), at('07:20'))];
    const [caution, ...more] = coldFilling(day, tasks);
    expect(more).toEqual([]);
    expect(caution?.code).toBe('COLD_FILLING');
    expect(caution?.says).toMatch(/^Bun: four hours out of the cold are up at 10:10\./);
  });

  it('speaks up when the tray is ready a minute after, not at the minute', () => {
    const ready = (end: string) => [trayTask('shape', at('06:10'), at('06:20')), trayTask('proof', at('06:20'), at(end))];
    expect(coldFilling(day, ready('10:10'))[0]?.says).toMatch(/are up at 10:10/);
    expect(coldFilling(day, ready('10:11'))[0]?.says).toMatch(/out of the cold over 4 h in this plan, from 10:10 on/);
  });

  it('counts unloading to the end of the last hands-on minute', () => {
    const unload = { handsOn: [{ person: 'ann', start: at('10:10'), end: at('10:11'), for: 'unload' as const }] };
    const tasks = [trayTask('shape', at('06:10'), at('09:50')), trayTask('bake', at('09:50'), at('10:10'), unload)];
    expect(coldFilling(day, tasks)[0]?.says).toMatch(/over 4 h in this plan, from 10:10 on/);
  });

  it('stops counting in a cabinet at 5 C or below and goes on after it, waiting in it included', () => {
    const overnight = (id: string) => [
      trayTask('shape', at('00:00'), at('00:12')),
      trayTask('retard', at('00:12'), at('06:00'), inCabinet(id)),
      trayTask('proof', at('06:30'), at('08:30')),
    ];
    // 12 minutes before the cold, so 228 after 06:30: 10:18.
    expect(coldFilling(day, overnight('cold'))[0]?.says).toMatch(/are up at 10:18/);
    // 10 C is not cold: four hours from midnight.
    expect(coldFilling(day, overnight('cool'))[0]?.says).toMatch(/over 4 h in this plan, from 04:00 on/);
  });

  it('speaks of the tray that is out longest, once', () => {
    const tasks = [trayTask('shape', at('07:00'), at('07:10')), trayTask('shape', at('06:00'), at('06:10'), { tray: 'bun-2' })];
    const cautions = coldFilling(day, tasks);
    expect(cautions).toHaveLength(1);
    expect(cautions[0]?.says).toMatch(/are up at 10:00/);
  });

  it('is for products marked so, and comes with cooling when they are baked', () => {
    const bake = [trayTask('bake', at('07:00'), at('07:16'))];
    expect(coldFilling(dayWith({}), bake)).toEqual([]);
    expect(cooling(dayWith({}), bake)).toEqual([]);
    // FDA Food Code 3-501.14: 135 to 70 F within 2 h, to 41 F within 6 h in all; in C 57, 21 and 5.
    expect(cooling(day, bake)[0]?.says).toMatch(/57 C to 21 C within 2 h and to 5 C within 6 h/);
    expect([135, 70, 41].map((f) => Math.round(((f - 32) * 5) / 9))).toEqual([57, 21, 5]);
    expect(cooling(day, [trayTask('shape', 0, 10)])).toEqual([]);
  });
});
