// A job shop of six jobs and six machines, known as ft06: H. Fisher, G. L. Thompson 1963, in J. F. Muth and G. L. Thompson (eds.),
// Industrial Scheduling, chapter 15. Machine and duration of each operation in order. The least makespan is 55.
import type { Jobs } from './jobShopCases.ts';

export const FT06: Jobs = [
  [
    [2, 1],
    [0, 3],
    [1, 6],
    [3, 7],
    [5, 3],
    [4, 6],
  ],
  [
    [1, 8],
    [2, 5],
    [4, 10],
    [5, 10],
    [0, 10],
    [3, 4],
  ],
  [
    [2, 5],
    [3, 4],
    [5, 8],
    [0, 9],
    [1, 1],
    [4, 7],
  ],
  [
    [1, 5],
    [0, 5],
    [2, 5],
    [3, 3],
    [4, 8],
    [5, 9],
  ],
  [
    [2, 9],
    [1, 3],
    [4, 5],
    [5, 4],
    [0, 3],
    [3, 1],
  ],
  [
    [1, 3],
    [3, 3],
    [5, 9],
    [0, 10],
    [4, 4],
    [2, 1],
  ],
];

export const FT06_OPTIMUM = 55;
