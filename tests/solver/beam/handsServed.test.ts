// The beam some steps at a time, and the lane that proves with it: whoever asks comes to an end, and gets schedules that stand.
import { describe, expect, it } from 'vitest';
import { audit } from '../../../src/solver/audit.ts';
import { HandsServed } from '../../../src/solver/handsServed.ts';
import { Lane, type News, type Stretch } from '../../../src/solver/lane.ts';
import { emptyLayout } from '../../../src/solver/layout.ts';
import { randomOf } from '../../../src/solver/random.ts';
import { Search } from '../../../src/solver/search.ts';
import { shopOf } from '../../../src/solver/shop.ts';
import { solve } from '../../../src/solver/solve.ts';
import { jobShop, solved } from '../shops.ts';
import { handsDay, JOBS } from './handsDay.ts';

const problem = handsDay(JOBS);
const shop = shopOf(problem);
const always = (): boolean => true;
const NOTHING: News = { layout: emptyLayout(shop), total: Number.POSITIVE_INFINITY, isComplete: false, floor: 0 };

describe('some steps at a time', () => {
  it('gives whole schedules, and is over after so many steps', () => {
    const served = HandsServed.of(shop, randomOf(1));
    if (served === null) throw new Error('not served');
    let count = 0;
    let asked = 0;
    while (!served.isOver) {
      asked++;
      const layout = served.go(500, always);
      if (layout === null) continue;
      count++;
      audit(shop, layout, new Search(shop, randomOf(1)).adopt(layout));
    }
    expect(count).toBeGreaterThan(0);
    // A step counts once; a look at what can come next may pass the number asked for.
    expect(asked).toBeLessThanOrEqual(120);
  });

  it('stops when it may not go on', () => {
    const served = HandsServed.of(shop, randomOf(1));
    expect(served?.go(1000, () => false)).toBeNull();
    expect(served?.steps).toBe(0);
  });

  it('is nothing for machines that share the work', () => {
    expect(
      HandsServed.of(
        shopOf(
          jobShop([
            [
              [0, 3],
              [1, 2],
            ],
            [
              [1, 2],
              [0, 3],
            ],
          ]),
        ),
        randomOf(1),
      ),
    ).toBeNull();
  });
});

describe('the lane that proves', () => {
  const stretch: Stretch = { rounds: Number.POSITIVE_INFINITY, untilMs: 1, heat: 0.01, isScouted: false, isServed: true };
  /** A clock that says so many times that there is time. */
  const clock = (times: number) => {
    let asked = 0;
    return () => (asked++ < times ? 0 : 1);
  };

  it('has a schedule of its own where it is to serve, before anybody told it one', () => {
    const found = new Lane(shop, 5, 'prove', true).run(NOTHING, stretch, clock(3000));
    expect(found.total).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(found.isComplete).toBe(true);
  });
});

describe('a solve by rounds', () => {
  const madeBy = async (rounds: number): Promise<[rounds: number, total: number][]> => {
    const told: [number, number][] = [];
    await solve(
      problem,
      1,
      { rounds, untilMs: Number.POSITIVE_INFINITY, fillInUntilMs: Number.POSITIVE_INFINITY, isAudited: true },
      {
        now: () => 0,
        isCancelled: () => false,
        pause: () => Promise.resolve(),
        onProgress: ({ cost, rounds: so }) => told.push([so, cost.total]),
      },
    );
    return told;
  };

  it('begins with the beam, and counts its steps as rounds', async () => {
    const served = HandsServed.of(shop, randomOf(1)) as HandsServed;
    while (served.go(2000, always) === null);
    const told = await madeBy(100);
    const counted = told.find(([rounds]) => rounds > 0);
    expect(counted?.[0]).toBe(Math.ceil(served.steps / 200));
    expect(await madeBy(100)).toEqual(told);
  });
});

it('a solve by the clock proves the price that one by rounds proves', async () => {
  const byRounds = await solved(problem, 3000);
  const untilMs = performance.now() + 20_000;
  const byClock = await solve(
    problem,
    1,
    { rounds: Number.POSITIVE_INFINITY, untilMs, fillInUntilMs: untilMs, isAudited: true },
    { now: () => performance.now(), isCancelled: () => false, pause: () => Promise.resolve(), onProgress: () => {} },
  );
  expect([byRounds.stopped, byClock.stopped]).toEqual(['proved', 'proved']);
  expect(byClock.cost.total).toBe(byRounds.cost.total);
}, 60_000);
