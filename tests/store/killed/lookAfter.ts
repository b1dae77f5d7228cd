// What is wrong with a store whose writers were killed, and with its last copy. Used by manyRounds.ts.
import { cpSync, existsSync, rmSync } from 'node:fs';
import { openStore } from '../../../src/store/openStore.ts';
import type { Told } from './acknowledgement.ts';
import { contentOf, numberOf, pagesOf } from './content.ts';
import { type Written, wrongIn } from './wrongIn.ts';

/** What writer.ts writes. */
const WRITTEN: Written = {
  names: ['scenario 0', 'scenario 1', 'scenario 2'],
  dates: ['day 0', 'day 1', 'day 2'],
  scenario: ({ text }) => numberOf(text),
  posted: ({ plan, scenario, pages }) => {
    const number = numberOf(plan);
    return number !== null && scenario === plan && pages.join() === pagesOf(number).join() ? number : null;
  },
  event: (text) => {
    const [part = ''] = text.split('/', 1);
    const number = numberOf(text.slice(part.length + 1));
    return number === null ? null : { number, part: Number(part) };
  },
  isWork: ({ asked, answer, state }, number, isAcknowledged) => {
    const text = contentOf(number);
    const isAnswered = answer === text && state === 'done';
    return asked === text && (isAnswered || (answer === null && !isAcknowledged));
  },
  idOf: (number) => `w${number}`,
};

async function wrongInFile(file: string, told: readonly Told[]): Promise<readonly string[]> {
  const store = await openStore(file);
  try {
    return await wrongIn(store, told, WRITTEN);
  } finally {
    await store.close();
  }
}

/** @param told - by all writers of this file, in their order. */
export async function lookAfter(file: string, told: readonly Told[]): Promise<readonly string[]> {
  const faults = [...(await wrongInFile(file, told))];
  const copy = `${file}.copy`;
  const last = told.findLastIndex((each) => 'done' in each && each.done === 'backing up');
  if (!existsSync(copy)) return last === -1 ? faults : [...faults, 'lost: the copy'];
  // A copy of the copy, since opening it changes it. It holds at least what was acknowledged before the last one told was begun.
  const looked = `${file}.looked-at`;
  cpSync(copy, looked);
  const begun = told.slice(0, Math.max(0, last));
  // What a later, unacknowledged copy took was allowed to forget more.
  const forgetting = told.slice(begun.length).filter((each) => 'doing' in each && each.doing === 'forgetting');
  faults.push(...(await wrongInFile(looked, [...begun, ...forgetting])).map((fault) => `in the copy: ${fault}`));
  rmSync(looked);
  return faults;
}
