// What is wrong with a store whose writers were killed: something acknowledged that is not there, something there that is not whole.
import { cpSync, existsSync, rmSync } from 'node:fs';
import { openStore } from '../../../src/store/openStore.ts';
import type { Store } from '../../../src/store/store.ts';
import type { Told } from './acknowledgement.ts';
import { contentOf, numberOf, pagesOf } from './content.ts';

/** Work asked before this number may have been forgotten. */
function forgottenBefore(told: readonly Told[]): number {
  return Math.max(-1, ...told.flatMap((each) => ('doing' in each && each.doing === 'forgetting' ? [each.number - 20] : [])));
}

async function missing(store: Store, told: readonly Told[]): Promise<readonly string[]> {
  const maybeForgotten = forgottenBefore(told);
  const faults: string[] = [];
  for (const each of told) {
    if (!('done' in each)) continue;
    const { number } = each;
    const text = contentOf(number);
    const isThere = async (): Promise<boolean> => {
      if (each.done === 'saving') return (await store.scenario(each.name, each.revision))?.text === text;
      if (each.done === 'posting') {
        const posted = await store.posted(each.date, each.revision);
        return posted?.plan === text && posted.scenario === text && posted.pages.join() === pagesOf(number).join();
      }
      if (each.done === 'telling')
        return (await store.happened(each.date)).some((event) => event.number === each.first && event.event === `0/${text}`);
      if (each.done === 'accepting') {
        const work = await store.work(`w${number}`);
        if (work === null) return number < maybeForgotten;
        return work.state === 'done' && work.asked === text && work.answer === text;
      }
      return true;
    };
    if (!(await isThere())) faults.push(`lost: ${each.done} ${number}`);
  }
  return faults;
}

function gap(revisions: readonly number[], what: string): readonly string[] {
  const isWhole = revisions.every((revision, index) => revision === revisions.length - index);
  return isWhole ? [] : [`revisions of ${what}: ${revisions.join(' ')}`];
}

async function tornDays(store: Store): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const date of ['day 0', 'day 1', 'day 2']) {
    const history = await store.postedHistory(date);
    faults.push(
      ...gap(
        history.map(({ revision }) => revision),
        date,
      ),
    );
    for (const { revision } of history) {
      const posted = await store.posted(date, revision);
      const number = numberOf(posted?.plan ?? '');
      if (number === null || posted?.pages.join() !== pagesOf(number).join()) faults.push(`torn: ${date}, revision ${revision}`);
    }
    const events = await store.happened(date);
    events.forEach(({ number, event }, index) => {
      const part = index % 3;
      if (number !== index + 1 || !event.startsWith(`${part}/`) || numberOf(event.slice(2)) === null)
        faults.push(`torn: what happened on ${date}, ${index + 1}`);
    });
    if (events.length % 3 !== 0) faults.push(`torn: ${events.length} events of ${date}, told by threes`);
  }
  return faults;
}

/** Also what was begun and never acknowledged is there as a whole or not at all. */
async function torn(store: Store, told: readonly Told[]): Promise<readonly string[]> {
  const faults = [...(await store.faults()), ...(await tornDays(store))];
  for (const { name } of await store.scenarios()) {
    const history = await store.scenarioHistory(name);
    faults.push(
      ...gap(
        history.map(({ revision }) => revision),
        name,
      ),
    );
    for (const { revision } of history) {
      const text = (await store.scenario(name, revision))?.text ?? '';
      if (name !== 'old' && numberOf(text) === null) faults.push(`torn: ${name}, revision ${revision}`);
    }
  }
  const maybeForgotten = forgottenBefore(told);
  for (const each of told) {
    if (!('doing' in each) || each.doing !== 'accepting' || each.number < maybeForgotten) continue;
    const [work, key] = [await store.work(`w${each.number}`), await store.key(`k${each.number}`)];
    if ((work === null) !== (key === null)) faults.push(`torn: work ${each.number} and its key`);
  }
  return faults;
}

async function wrongIn(file: string, told: readonly Told[]): Promise<readonly string[]> {
  const store = await openStore(file);
  try {
    return [...(await torn(store, told)), ...(await missing(store, told))];
  } finally {
    await store.close();
  }
}

/** @param told - by all writers of this file, in their order. */
export async function lookAfter(file: string, told: readonly Told[]): Promise<readonly string[]> {
  const faults = [...(await wrongIn(file, told))];
  const copy = `${file}.copy`;
  const last = told.findLastIndex((each) => 'done' in each && each.done === 'backing up');
  if (!existsSync(copy)) return last === -1 ? faults : [...faults, 'lost: the copy'];
  // A copy of the copy, since opening it changes it. It holds at least what was acknowledged before the last one told was begun.
  const looked = `${file}.looked-at`;
  cpSync(copy, looked);
  const begun = told.slice(0, Math.max(0, last));
  // What a later, unacknowledged copy took was allowed to forget more.
  const forgetting = told.slice(begun.length).filter((each) => 'doing' in each && each.doing === 'forgetting');
  faults.push(...(await wrongIn(looked, [...begun, ...forgetting])).map((fault) => `in the copy: ${fault}`));
  rmSync(looked);
  return faults;
}
