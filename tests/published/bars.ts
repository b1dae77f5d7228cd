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

const FLOW_SHOPS = ['johnson-bookbinder', 'johnson-five-jobs', 'nowait-three-machines-owu', 'nowait-two-machines-bookbinder'];

export const BARS: readonly Bar[] = [
  { folder: 'jobshop', says: 'ft06 optimal', within: 1, atLeast: 1, rounds: { ft06: 3000 } },
  {
    folder: 'jobshop',
    says: 'la01 to la05 optimal',
    within: 1,
    atLeast: 5,
    rounds: { la01: 5000, la02: 5000, la03: 5000, la04: 10000, la05: 5000 },
  },
  {
    folder: 'jobshop',
    says: 'la06 to la10 optimal',
    within: 1,
    atLeast: 5,
    rounds: { la06: 5000, la07: 5000, la08: 5000, la09: 5000, la10: 5000 },
  },
  { folder: 'jobshop', says: 'ft10 within 1 %', within: 1.01, atLeast: 1, rounds: { ft10: 20000 } },
  { folder: 'jobshop', says: 'ft06 without waiting optimal', within: 1, atLeast: 1, rounds: { 'ft06 no-wait': 3000 } },
  {
    folder: 'jobshop',
    says: 'la01 to la05 without waiting within 1 %',
    within: 1.01,
    atLeast: 5,
    rounds: same(null, ['la01 no-wait', 'la02 no-wait', 'la03 no-wait', 'la04 no-wait', 'la05 no-wait']),
  },
  {
    folder: 'jobshop',
    says: 'ft06 where machines are kept and with four or five operators: optimal',
    within: 1,
    atLeast: 3,
    rounds: same(5000, ['ft06 blocking', 'ft06 operators 4', 'ft06 operators 5']),
  },
  { folder: 'rcpsp', says: '10 of 12 projects optimal', within: 1, atLeast: 10, rounds: same(3000, PROJECTS) },
  {
    folder: 'rcpsp-max',
    says: 'a schedule of every project with maximum lags that has one, none of the others',
    within: 'a schedule',
    atLeast: 20,
    rounds: same(3000, WITH_MAXIMUM_LAGS),
  },
  {
    folder: 'rcpsp-max',
    says: '17 of 20 projects with maximum lags optimal, or none found where none exists',
    within: 1,
    atLeast: 17,
    rounds: same(3000, WITH_MAXIMUM_LAGS),
  },
  {
    folder: 'flexible',
    says: 'mk01 and mk03 optimal',
    within: 1,
    atLeast: 2,
    rounds: { mk01: 4000, mk03: 3000 },
  },
  {
    folder: 'flexible',
    says: 'mk02 within 2 % of the best known',
    within: 1.02,
    atLeast: 1,
    rounds: { mk02: null },
  },
  { folder: 'flowshop', says: 'worked flow shops optimal', within: 1, atLeast: 4, rounds: same(5000, FLOW_SHOPS) },
  {
    folder: 'flowshop',
    says: 'worked flow shops without waiting optimal',
    within: 1,
    atLeast: 3,
    rounds: {
      'johnson-five-jobs no-wait': 5000,
      'nowait-three-machines-owu no-wait': 5000,
      'nowait-two-machines-bookbinder no-wait': 12000,
    },
  },
  {
    folder: 'tardiness',
    says: '4 of 8 weighted tardiness instances optimal',
    within: 1,
    atLeast: 4,
    rounds: {
      'wt40-file002': 100,
      'wt40-file003': 100,
      'wt40-file004': 6000,
      'wt40-file007': 100,
      'wt40-file011': 100,
      'wt40-file026': 6000,
      'wt40-file028': 6000,
      'wt40-file051': 6000,
    },
  },
  { folder: 'osp', says: 'a schedule of every oven instance', within: 'a schedule', atLeast: 26, rounds: same(5, OVENS) },
];

/** Whether an attempt does what the bar asks of an instance. */
export function holds({ within }: Bar, { published }: PublishedCase, { found, faults }: Attempt): boolean {
  if (faults.length > 0) return false;
  if (found === 'none') return !published.isFeasible;
  return within === 'a schedule' || (published.best !== null && found.value <= within * published.best + 1e-6);
}
