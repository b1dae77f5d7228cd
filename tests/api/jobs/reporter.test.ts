// What a search tells, and when: news four times a second, a plan of the best once a second, none in a search that is soon over.
import { expect, test } from 'vitest';
import { Reporter } from '../../../src/api/jobs/reporter.ts';
import type { ThreadNews } from '../../../src/api/jobs/threadTask.ts';
import type { Plan } from '../../../src/model/plan.ts';
import type { Progress } from '../../../src/planning.ts';
import { finePlan } from '../../cli/samplePlan.ts';

function reporting(seconds: number) {
  const clock = { ms: 1000 };
  const told: ThreadNews[] = [];
  const made: number[] = [];
  const reporter = new Reporter({ now: () => clock.ms, seconds, tell: (news) => told.push(news) });
  const found = (cost: number): void =>
    reporter.progress({ cost, changed: `costs ${cost}` } as Progress, (): Plan => {
      made.push(cost);
      return finePlan;
    });
  const wait = (ms: number): void => {
    clock.ms += ms;
    reporter.tellInTime();
  };
  return { told, made, found, wait };
}

test('the first news at once, the next a quarter of a second later, the last of what came meanwhile', () => {
  const { told, found, wait } = reporting(10);
  found(9);
  found(8);
  wait(249);
  expect(told.map(({ news }) => news.says)).toEqual(['costs 9']);
  wait(1);
  expect(told.map(({ news }) => [news.says, news.seconds])).toEqual([
    ['costs 9', 0],
    ['costs 8', 0.25],
  ]);
  wait(1000);
  expect(told.filter(({ best }) => best === null)).toHaveLength(2);
});

test('a plan of the best after half a second, also when nothing has been found since; then a second apart', () => {
  const { told, made, found, wait } = reporting(10);
  found(9);
  wait(499);
  expect(made).toEqual([]);
  wait(1);
  expect(made).toEqual([9]);
  expect(told.at(-1)).toMatchObject({ best: JSON.stringify(finePlan), news: { says: 'costs 9' } });
  found(8);
  wait(999);
  expect(made).toEqual([9]);
  wait(1);
  expect(made).toEqual([9, 8]);
  wait(5000);
  expect(made).toEqual([9, 8]);
});

test('none any more when the search is nearly over', () => {
  const { made, found, wait } = reporting(2);
  found(9);
  wait(500);
  wait(1200);
  found(8);
  wait(100);
  expect(made).toEqual([9]);
});
