// What is wrong with a store whose writers were killed: something acknowledged that is not there, something there that is not whole, or
// there twice. Used by lookAfter.ts for writers of the store alone, and by tests/api/killed for the service over it.
import type { PostedRecord, ScenarioRecord, Store, WorkRecord } from '../../../src/store/store.ts';
import type { Told } from './acknowledgement.ts';

/** Where writers write, and how to tell by itself what each has written. */
export type Written = {
  readonly names: readonly string[];
  readonly dates: readonly string[];
  /** The number of what is whole; null when it is cut or mixed up. */
  readonly scenario: (record: ScenarioRecord) => number | null;
  readonly posted: (record: PostedRecord) => number | null;
  readonly event: (text: string) => { readonly number: number; readonly part: number } | null;
  readonly isWork: (record: WorkRecord, number: number, isAcknowledged: boolean) => boolean;
  /** The id work will have, where that is known before it is acknowledged. */
  readonly idOf?: (number: number) => string;
};

/** Events are told by so many at once. */
export const PARTS = 3;

type Kept = {
  readonly what: 'saving' | 'posting' | 'telling';
  /** Name or date, and which revision of it; of events the number of the first. */
  readonly of: string;
  readonly place: number;
  /** Null when it is not whole. */
  readonly number: number | null;
};

async function saved(store: Store, { names, scenario }: Written): Promise<readonly Kept[]> {
  const all: Kept[] = [];
  for (const of of names)
    for (const { revision } of await store.scenarioHistory(of)) {
      const record = await store.scenario(of, revision);
      all.push({ what: 'saving', of, place: revision, number: record === null ? null : scenario(record) });
    }
  return all;
}

async function posted(store: Store, written: Written): Promise<readonly Kept[]> {
  const all: Kept[] = [];
  for (const of of written.dates)
    for (const { revision } of await store.postedHistory(of)) {
      const record = await store.posted(of, revision);
      all.push({ what: 'posting', of, place: revision, number: record === null ? null : written.posted(record) });
    }
  return all;
}

async function told(store: Store, { dates, event }: Written): Promise<readonly Kept[]> {
  const all: Kept[] = [];
  for (const of of dates) {
    const events = await store.happened(of);
    for (let before = 0; before < events.length; before += PARTS) {
      const together = events.slice(before, before + PARTS);
      const number = event(together[0]?.event ?? '')?.number ?? null;
      const isWhole =
        together.length === PARTS &&
        together.every((record, index) => {
          const read = event(record.event);
          return record.number === before + 1 + index && read?.part === index && read.number === number;
        });
      all.push({ what: 'telling', of, place: before + 1, number: isWhole ? number : null });
    }
  }
  return all;
}

/** Revisions are counted from 1 without a gap. */
function gaps(kept: readonly Kept[]): readonly string[] {
  const revisions = new Map<string, number[]>();
  for (const { what, of, place } of kept) {
    const key = `${what} ${of}`;
    if (what !== 'telling') revisions.set(key, [...(revisions.get(key) ?? []), place]);
  }
  return [...revisions].flatMap(([key, places]) => {
    const isWhole = places.every((place, index) => place === places.length - index);
    return isWhole ? [] : [`a gap: ${key} has ${places.join(' ')}`];
  });
}

/** What was begun and never acknowledged is there as a whole, once, or not at all. */
function torn(kept: readonly Kept[]): readonly string[] {
  const seen = new Set<string>();
  return kept.flatMap(({ what, of, place, number }) => {
    if (number === null) return [`torn: ${what} ${of}, ${place}`];
    const key = `${what} ${number}`;
    if (seen.has(key)) return [`twice: ${key}`];
    seen.add(key);
    return [];
  });
}

function lost(kept: readonly Kept[], acknowledged: readonly Told[]): readonly string[] {
  const numbers = new Map(kept.map(({ what, of, place, number }) => [`${what} ${of}, ${place}`, number]));
  const keyOf = (each: Told): string | null => {
    if (!('done' in each)) return null;
    if (each.done === 'saving') return `saving ${each.name}, ${each.revision}`;
    if (each.done === 'posting') return `posting ${each.date}, ${each.revision}`;
    return each.done === 'telling' ? `telling ${each.date}, ${each.first}` : null;
  };
  return acknowledged.flatMap((each) => {
    const key = keyOf(each);
    return key === null || numbers.get(key) === each.number ? [] : [`lost: ${each.number}, ${key}`];
  });
}

/** Work asked before this number may have been forgotten. */
function forgottenBefore(all: readonly Told[]): number {
  return Math.max(-1, ...all.flatMap((each) => ('doing' in each && each.doing === 'forgetting' ? [each.number - 20] : [])));
}

/** The id of the work that was asked for with the key of this number; null when the key is not there. */
export async function idOfKey(store: Store, number: number): Promise<string | null> {
  const key = await store.key(`k${number}`);
  return key === null ? null : key.location.slice(key.location.lastIndexOf('/') + 1);
}

async function wrongWork(store: Store, all: readonly Told[], { isWork, idOf }: Written): Promise<readonly string[]> {
  const maybeForgotten = forgottenBefore(all);
  const acknowledged = new Map(
    all.flatMap((each) => ('done' in each && each.done === 'accepting' ? [[each.number, each.id]] : [])),
  );
  const faults: string[] = [];
  for (const each of all) {
    if (!('doing' in each) || each.doing !== 'accepting') continue;
    const { number } = each;
    const isForgotten = number < maybeForgotten;
    const ofKey = await idOfKey(store, number);
    const id = acknowledged.get(number) ?? ofKey ?? idOf?.(number);
    const work = id === undefined ? null : await store.work(id);
    if (work === null && acknowledged.has(number) && !isForgotten) faults.push(`lost: accepting ${number}`);
    if (ofKey !== (work?.id ?? null) && !isForgotten) faults.push(`torn: work ${number} and its key`);
    if (work !== null && !isWork(work, number, acknowledged.has(number))) faults.push(`torn: work ${number}`);
  }
  return faults;
}

/** @param all - told by all writers of this store, in their order. */
export async function wrongIn(store: Store, all: readonly Told[], written: Written): Promise<readonly string[]> {
  const kept = [...(await saved(store, written)), ...(await posted(store, written)), ...(await told(store, written))];
  const inside = await store.faults();
  return [...inside, ...gaps(kept), ...torn(kept), ...lost(kept, all), ...(await wrongWork(store, all, written))];
}
