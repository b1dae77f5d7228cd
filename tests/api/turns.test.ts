// Turns: in the order they came, with a look at everything else in between once a slice is used up.
import { describe, expect, it } from 'vitest';
import { Turns } from '../../src/api/turns.ts';

/** A clock that a turn moves on. */
function clock(): { now: () => number; pass: (ms: number) => void } {
  let ms = 0;
  return {
    now: () => ms,
    pass: (more) => {
      ms += more;
    },
  };
}

const round = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('turns', () => {
  it('come in the order they were asked for, never before take returns', async () => {
    const told: string[] = [];
    const turns = new Turns(() => 0);
    for (const name of ['a', 'b', 'c']) turns.take(() => told.push(name));
    expect(told).toEqual([]);
    await round();
    expect(told).toEqual(['a', 'b', 'c']);
  });

  it('let the event loop go round after each that takes long', async () => {
    const { now, pass } = clock();
    const turns = new Turns(now);
    const told: number[] = [];
    for (let turn = 0; turn < 4; turn++)
      turns.take(() => {
        pass(5);
        told.push(turn);
      });
    await round();
    expect(told).toEqual([0, 1]);
    await round();
    expect(told).toEqual([0, 1, 2, 3]);
  });

  it('take up what is asked for within a turn, behind those that wait', async () => {
    const told: string[] = [];
    const turns = new Turns(() => 0);
    turns.take(() => turns.take(() => told.push('asked for later')));
    turns.take(() => told.push('waited'));
    await round();
    expect(told).toEqual(['waited', 'asked for later']);
  });

  it('go on after one that throws', () => {
    const told: string[] = [];
    const turns = new Turns(() => 0);
    const fault = new Error('thrown in a turn');
    const caught: unknown[] = [];
    const before = process.listeners('uncaughtException');
    process.removeAllListeners('uncaughtException');
    return new Promise<void>((resolve) => {
      process.once('uncaughtException', (error) => {
        caught.push(error);
      });
      turns.take(() => {
        throw fault;
      });
      turns.take(() => {
        told.push('the next');
        for (const listener of before) process.on('uncaughtException', listener);
        resolve();
      });
    }).then(() => {
      expect(caught).toEqual([fault]);
      expect(told).toEqual(['the next']);
    });
  });
});
