// The embedded store in a thread of its own, so that the event loop of a service never waits for the disk. Used by `ovenward serve`.
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import type { StoreOptions } from './openDatabase.ts';
import type { Store } from './store.ts';
import { StoreFault } from './storeFault.ts';
import type { Answers, StoreAnswer, StoreCall, Words } from './storeThread.ts';

/** Run from the sources, as the tests do, a thread has to be taught TypeScript before it can begin. */
const IS_SOURCE = import.meta.url.endsWith('.ts');
const FILE = fileURLToPath(new URL(IS_SOURCE ? './storeThread.ts' : './storeThread.js', import.meta.url));

/** A backup goes on for long between other calls; those are done one after the other, in the order they were asked for. */
const AT_ONCE = 64;

export type StoreThreadOptions = StoreOptions & {
  /** Told when the thread ends without being asked to. It is started again, on the same file, with the next call. */
  readonly report: (fault: unknown) => void;
};

/**
 * Opens the store in this file, or makes it, as openStore does, and rejects as it does. Calls are done in the order they are made.
 *
 * @param file - its path.
 */
export async function openStoreThread(file: string, { report, ...options }: StoreThreadOptions): Promise<Store> {
  const threads = new Piscina({
    filename: FILE,
    minThreads: 1,
    maxThreads: 1,
    concurrentTasksPerWorker: AT_ONCE,
    workerData: { file, ...options },
    execArgv: IS_SOURCE ? ['--import', 'tsx'] : [],
  });
  threads.on('error', report);
  let isClosed = false;
  const asked = async <Act extends keyof Store>(call: StoreCall<Act>): Promise<Answers[Act]> => {
    if (isClosed) throw new StoreFault('CLOSED', `The store ${file} has been closed.`);
    const answer: StoreAnswer<Act> = await threads.run(call);
    if (!answer.ok) throw new StoreFault(answer.code, answer.says);
    return answer.answer;
  };
  const asking =
    <Act extends keyof Store>(act: Act) =>
    (...words: Words[Act]): Promise<Answers[Act]> =>
      asked<Act>({ act, words });
  const store: Store = {
    saveScenario: asking('saveScenario'),
    scenario: asking('scenario'),
    scenarios: asking('scenarios'),
    scenarioHistory: asking('scenarioHistory'),
    addWork: asking('addWork'),
    changeWork: asking('changeWork'),
    work: asking('work'),
    openWork: asking('openWork'),
    key: asking('key'),
    post: asking('post'),
    posted: asking('posted'),
    postedHistory: asking('postedHistory'),
    lastPosted: asking('lastPosted'),
    tell: asking('tell'),
    happened: asking('happened'),
    forget: asking('forget'),
    isReady: async () => !isClosed && asked<'isReady'>({ act: 'isReady', words: [] }),
    faults: asking('faults'),
    backup: asking('backup'),
    close: async () => {
      if (isClosed) return;
      const closing = asked<'close'>({ act: 'close', words: [] });
      isClosed = true;
      await closing.finally(() => threads.destroy());
    },
  };
  try {
    await store.isReady();
    return store;
  } catch (error) {
    isClosed = true;
    await threads.destroy();
    throw error;
  }
}
