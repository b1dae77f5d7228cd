// Posting into the file of a store, which a service may have open at the same time. Used by openBoard.ts.
import type { Store } from '../store/store.ts';
import { type Board, postedMeanwhile } from './board.ts';
import { namedStore, storeAt } from './storeAt.ts';
import { storeRefused } from './storeRefused.ts';
import type { Surroundings } from './surroundings.ts';

async function revisionNow(store: Store, date: string): Promise<number> {
  return (await store.posted(date))?.revision ?? 0;
}

export async function storeBoard(named: string | undefined, date: string, { env, instant }: Surroundings): Promise<Board> {
  const file = namedStore(named, env);
  const refused = (error: unknown): never => {
    throw storeRefused(file, error);
  };
  const store = await storeAt(file);
  const before = await revisionNow(store, date).catch(async (error: unknown) => {
    await store.close();
    return refused(error);
  });
  return {
    post: async (scenario, plan, pages) => {
      const { timeZone } = scenario;
      const texts = { scenario: JSON.stringify(scenario), plan: JSON.stringify(plan), pages };
      const posted = await store.post({ date, postedAt: instant(), timeZone, ...texts }, before).catch(refused);
      if (posted === null) throw postedMeanwhile(date);
      return `Posted for ${date}, as plan ${posted.revision} of that day, in ${file}.`;
    },
    close: () => store.close(),
  };
}
