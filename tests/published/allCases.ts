// Every published case of a folder, ready to be solved.
import type { Folder } from './benchFolder.ts';
import { flexibleCases } from './flexibleCases.ts';
import { flowShopCases } from './flowShopCases.ts';
import { jobShopCases } from './jobShopCases.ts';
import { ovenCases } from './ovenCases.ts';
import { projectCases, projectCasesWithMaximumLags } from './projectCases.ts';
import type { PublishedCase } from './publishedCase.ts';
import { tardinessCases } from './tardinessCases.ts';

const CASES: Readonly<Record<Folder, () => PublishedCase[]>> = {
  jobshop: jobShopCases,
  flexible: flexibleCases,
  flowshop: flowShopCases,
  rcpsp: projectCases,
  'rcpsp-max': projectCasesWithMaximumLags,
  tardiness: tardinessCases,
  osp: ovenCases,
};

export function casesOf(folder: Folder): PublishedCase[] {
  return CASES[folder]();
}
