// The promises of src/store/store.ts kept in plain lists, slowly and obviously. What the real store is compared with.
import type { HappenedRecord, KeyRecord, PostedRecord, ScenarioRecord, Store, WorkRecord } from '../../src/store/store.ts';

/** What the parts of a store below have in common with `Store`; closing, copying and faults have no counterpart here. */
export type Asked = Omit<Store, 'isReady' | 'faults' | 'backup' | 'close'>;

function sortedBy<T>(list: readonly T[], figure: (item: T) => string | number): readonly T[] {
  return [...list].sort((a, b) => (figure(a) < figure(b) ? -1 : figure(a) > figure(b) ? 1 : 0));
}

const isOpen = ({ state }: WorkRecord): boolean => state === 'waiting' || state === 'running';

type Lists = {
  scenarios: ScenarioRecord[];
  works: WorkRecord[];
  keys: KeyRecord[];
  posted: PostedRecord[];
  told: HappenedRecord[];
};

function scenarioPart(lists: Lists): Pick<Asked, 'saveScenario' | 'scenario' | 'scenarios' | 'scenarioHistory'> {
  const newestFirst = (name: string) => lists.scenarios.filter((kept) => kept.name === name).reverse();
  const entry = ({ text: _, ...rest }: ScenarioRecord) => rest;
  return {
    saveScenario: async (scenario, isRevision) => {
      const [before] = newestFirst(scenario.name);
      const revision = before?.revision ?? 0;
      if (isRevision !== undefined && isRevision !== revision) return null;
      if (before?.text === scenario.text && before.mediaType === scenario.mediaType) return before;
      const saved = { ...scenario, revision: revision + 1 };
      lists.scenarios.push(saved);
      return saved;
    },
    scenario: async (name, revision) =>
      newestFirst(name).find((kept) => revision === undefined || kept.revision === revision) ?? null,
    scenarios: async () => {
      const names = [...new Set(lists.scenarios.map(({ name }) => name))];
      return sortedBy(
        names.flatMap((name) => newestFirst(name).slice(0, 1)),
        ({ name }) => Buffer.from(name).toString('hex'),
      ).map(entry);
    },
    scenarioHistory: async (name) => newestFirst(name).map(entry),
  };
}

function workPart(lists: Lists): Pick<Asked, 'addWork' | 'changeWork' | 'work' | 'openWork' | 'key' | 'forget'> {
  return {
    addWork: async (work, key) => {
      if (key !== undefined && lists.keys.some((kept) => kept.key === key.key)) return false;
      if (lists.works.some(({ id }) => id === work.id)) throw new Error('REFUSED');
      lists.works.push(work);
      if (key !== undefined) lists.keys.push(key);
      return true;
    },
    changeWork: async (id, changes) => {
      const at = lists.works.findIndex((work) => work.id === id);
      const before = lists.works[at];
      if (before === undefined) throw new Error('REFUSED');
      lists.works[at] = { ...before, ...changes };
    },
    work: async (id) => lists.works.find((work) => work.id === id) ?? null,
    openWork: async () => sortedBy(lists.works.filter(isOpen), ({ askedAt }) => askedAt),
    key: async (key) => lists.keys.find((kept) => kept.key === key) ?? null,
    forget: async (before) => {
      const isPosted = ({ answer }: WorkRecord) => lists.posted.some(({ plan }) => plan === answer);
      const works = lists.works.filter((work) => isOpen(work) || work.askedAt >= before || isPosted(work));
      const keys = lists.keys.filter(({ savedAt }) => savedAt >= before);
      const gone = lists.works.length - works.length + lists.keys.length - keys.length;
      Object.assign(lists, { works, keys });
      return gone;
    },
  };
}

function dayPart(lists: Lists): Pick<Asked, 'post' | 'posted' | 'postedHistory' | 'lastPosted' | 'tell' | 'happened'> {
  const newestFirst = (date: string) => lists.posted.filter((kept) => kept.date === date).reverse();
  const entry = ({ scenario: _, plan: __, pages: ___, ...rest }: PostedRecord) => rest;
  const happened = (date: string) => lists.told.filter((record) => record.date === date);
  return {
    post: async (posted, isRevision) => {
      const revision = newestFirst(posted.date).length;
      if (isRevision !== undefined && isRevision !== revision) return null;
      const record = { ...posted, revision: revision + 1 };
      lists.posted.push(record);
      return record;
    },
    posted: async (date, revision) =>
      newestFirst(date).find((kept) => revision === undefined || kept.revision === revision) ?? null,
    postedHistory: async (date) => newestFirst(date).map(entry),
    lastPosted: async () => lists.posted.slice(-1).map(entry)[0] ?? null,
    tell: async (date, toldAt, events) => {
      const told = events.map((event, index) => ({ date, number: happened(date).length + 1 + index, toldAt, event }));
      lists.told.push(...told);
      return told;
    },
    happened: async (date) => happened(date),
  };
}

export function memoryStore(): Asked {
  const lists: Lists = { scenarios: [], works: [], keys: [], posted: [], told: [] };
  return { ...scenarioPart(lists), ...workPart(lists), ...dayPart(lists) };
}
