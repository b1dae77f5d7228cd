// The bars: which published values must be reached on which instances, and with what effort the tests reach them.
// Used by published.test.ts, without a clock, and by run.ts, by the clock.
import type { Folder } from './benchFolder.ts';
import type { PublishedCase } from './publishedCase.ts';
import type { Attempt } from './solveCase.ts';

/** Rounds `solve` may take in the test; null: no effort is known that reaches the bar, and the test leaves it to run.ts. */
type Rounds = number | null;

export type Bar = {
  readonly folder: Folder;
  readonly says: string;
  /** Found at most this many times the published value; 'a schedule': any will do, or none where none exists. */
  readonly within: number | 'a schedule';
  /** On so many of the instances at least. */
  readonly atLeast: number;
  readonly rounds: Readonly<Record<string, Rounds>>;
};

const same = (rounds: Rounds, names: readonly string[]): Record<string, Rounds> =>
  Object.fromEntries(names.map((name) => [name, rounds]));

const PROJECTS = ['1_1', '2_1', '5_1', '9_1', '13_1', '17_1', '21_1', '25_1', '29_1', '31_1', '41_1', '48_1'].map(
  (name) => `j30${name}`,
);

const WITH_MAXIMUM_LAGS = [
  ...['126', '2', '223', '224', '241', '88', '96'].map((name) => `j10-psp${name}`),
  ...['187', '2', '236', '240'].map((name) => `j20-psp${name}`),
  ...['16', '44', '9'].map((name) => `j30-psp${name}`),
  ...['1', '4', '67', '87'].map((name) => `ubo10-psp${name}`),
  ...['36', '78'].map((name) => `ubo20-psp${name}`),
];

const OVENS = [
  'osp-001-n10-k2-a2',
  'osp-003-n10-k2-a2',
  'osp-007-n10-k2-a5',
  'osp-009-n10-k2-a5',
  'osp-012-n10-k5-a2',
  'osp-015-n10-k5-a2',
  'osp-017-n10-k5-a5',
  'osp-020-n10-k5-a5',
  'osp-024-n25-k2-a2',
  'osp-025-n25-k2-a2',
  'osp-028-n25-k2-a5',
  'osp-032-n25-k5-a2',
  'osp-035-n25-k5-a2',
  'osp-039-n25-k5-a5',
  'osp-043-n50-k2-a2',
  'osp-049-n50-k2-a5',
  'osp-053-n50-k5-a2',
  'osp-054-n50-k5-a2',
  'osp-059-n50-k5-a5',
  'osp-063-n100-k2-a2',
  'osp-069-n100-k2-a5',
  'osp-073-n100-k5-a2',
  'osp-075-n100-k5-a2',
  'osp-078-n100-k5-a5',
  'osp-097-n250-k5-a5',
  'osp-112-n500-k5-a2',
];

export const BARS: readonly Bar[] = [
  { folder: 'jobshop', says: 'ft06 optimal', within: 1, atLeast: 1, rounds: { ft06: null } },
  {
    folder: 'jobshop',
    says: 'la01 to la05 optimal',
    within: 1,
    atLeast: 5,
    rounds: { la01: null, la02: null, la03: null, la04: null, la05: null },
  },
  {
    folder: 'jobshop',
    says: 'la06 to la10 optimal',
    within: 1,
    atLeast: 5,
    rounds: { la06: null, la07: null, la08: null, la09: null, la10: null },
  },
  { folder: 'jobshop', says: 'ft10 within 1 %', within: 1.01, atLeast: 1, rounds: { ft10: null } },
  {
    folder: 'jobshop',
    says: 'without waiting: ft06, la01 to la05 optimal',
    within: 1,
    atLeast: 6,
    rounds: same(null, ['ft06 no-wait', 'la01 no-wait', 'la02 no-wait', 'la03 no-wait', 'la04 no-wait', 'la05 no-wait']),
  },
  { folder: 'rcpsp', says: '10 of 12 projects optimal', within: 1, atLeast: 10, rounds: same(null, PROJECTS) },
  {
    folder: 'rcpsp-max',
    says: 'a schedule of every project with maximum lags that has one, none of the others',
    within: 'a schedule',
    atLeast: 20,
    rounds: same(null, WITH_MAXIMUM_LAGS),
  },
  {
    folder: 'rcpsp-max',
    says: '17 of 20 projects with maximum lags optimal, or none found where none exists',
    within: 1,
    atLeast: 17,
    rounds: same(null, WITH_MAXIMUM_LAGS),
  },
  {
    folder: 'flexible',
    says: 'mk01 to mk03 within 2 % of the best known',
    within: 1.02,
    atLeast: 3,
    rounds: { mk01: null, mk02: null, mk03: null },
  },
  {
    folder: 'flowshop',
    says: 'worked flow shops optimal, with waiting and without',
    within: 1,
    atLeast: 8,
    rounds: same(
      null,
      ['johnson-bookbinder', 'johnson-five-jobs', 'nowait-three-machines-owu', 'nowait-two-machines-bookbinder'].flatMap(
        (name) => [name, `${name} no-wait`],
      ),
    ),
  },
  { folder: 'osp', says: 'a schedule of every oven instance', within: 'a schedule', atLeast: 26, rounds: same(null, OVENS) },
];

/** Whether an attempt does what the bar asks of an instance. */
export function holds({ within }: Bar, { published }: PublishedCase, { found, faults }: Attempt): boolean {
  if (faults.length > 0) return false;
  if (found === 'none') return !published.isFeasible;
  return within === 'a schedule' || (published.best !== null && found.value <= within * published.best + 1e-6);
}
