// Threads for searches, one each, and beside them a few for light work, and one that says whether all is well: it waits for neither.
// Opened by openJobs.ts.
import { fileURLToPath } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import { type Crew, LIGHT_THREADS, type Search } from './crew.ts';
import type { ThreadAnswer, ThreadNews, ThreadTask } from './threadTask.ts';
import type { Ask } from './work.ts';

export type CrewOptions = {
  readonly threads: number;
  /** Version of this program. */
  readonly version: string;
  /** Told of faults of threads that do nothing for anybody. */
  readonly report: (fault: unknown) => void;
};

/** Run from the sources, as the tests do, a thread has to be taught TypeScript before it can begin. */
const IS_SOURCE = import.meta.url.endsWith('.ts');
const FILE = fileURLToPath(new URL(IS_SOURCE ? './workThread.ts' : './workThread.js', import.meta.url));

/** A search that grows past this ends with its thread and takes nothing else with it. */
const MOST_MEMORY_MB = 2_048;

function pool(threads: number, report: (fault: unknown) => void): Piscina {
  const opened = new Piscina({
    filename: FILE,
    minThreads: threads,
    maxThreads: threads,
    execArgv: IS_SOURCE ? ['--import', 'tsx'] : [],
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY_MB },
  });
  opened.on('error', report);
  return opened;
}

export function openCrew({ threads, version, report }: CrewOptions): Crew {
  const searchers = pool(threads, report);
  // All are always there: to start one takes longer than what it is wanted for, and they hold some 40 MB each.
  const light = pool(LIGHT_THREADS, report);
  const well = pool(1, report);

  const search = (ask: Ask, told: (news: ThreadNews) => void): Search => {
    const stop = new Int32Array(new SharedArrayBuffer(4));
    const killed = new AbortController();
    const { port1, port2 } = new MessageChannel();
    port1.on('message', told);
    port1.unref();
    const task: ThreadTask = { do: 'answer', ask, stop, port: port2, version };
    const answer: Promise<ThreadAnswer> = searchers
      .run(task, { transferList: [port2], signal: killed.signal })
      .finally(() => port1.close());
    return { answer, stop: () => Atomics.store(stop, 0, 1), kill: () => killed.abort() };
  };

  const tinyDay: ThreadTask = { do: 'plan a tiny day', version };
  const warmUp: ThreadTask = { do: 'warm up', version };
  const allOf = (opened: Piscina, task: ThreadTask) => opened.threads.map(() => opened.run(task).catch(report));
  return {
    // As many at once as there are threads, so that each gets one.
    warmUp: async () => {
      await Promise.all([...allOf(searchers, tinyDay), ...allOf(light, warmUp)]);
    },
    search,
    light: (kind, given) => {
      const task: ThreadTask = { do: 'light', kind, given };
      return light.run(task);
    },
    planTinyDay: () => well.run(tinyDay),
    close: async () => {
      await Promise.all([searchers, light, well].map((opened) => opened.destroy()));
    },
  };
}
