// Threads for searches, one each, and a few beside them for what somebody waits for: drawings and the question whether all is well.
// Opened by openJobs.ts.
import { fileURLToPath } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import type { Crew, Search } from './crew.ts';
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

/** Threads that draw and look after health. */
const LIGHT_THREADS = 2;
const IDLE_MS = 60_000;

function pool(minThreads: number, maxThreads: number, report: (fault: unknown) => void): Piscina {
  const opened = new Piscina({
    filename: FILE,
    minThreads,
    maxThreads,
    idleTimeout: IDLE_MS,
    execArgv: IS_SOURCE ? ['--import', 'tsx'] : [],
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY_MB },
  });
  opened.on('error', report);
  return opened;
}

export function openCrew({ threads, version, report }: CrewOptions): Crew {
  const searchers = pool(threads, threads, report);
  const light = pool(0, LIGHT_THREADS, report);

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

  const asked = (task: ThreadTask) => light.run(task);
  const tinyDay: ThreadTask = { do: 'plan a tiny day', version };
  return {
    // As many at once as there are threads, so that each gets one.
    warmUp: async () => {
      await Promise.all(Array.from({ length: threads }, () => searchers.run(tinyDay).catch(report)));
    },
    search,
    draw: (what, json) => asked({ do: 'draw', what, json }),
    planTinyDay: () => asked(tinyDay),
    close: async () => {
      await Promise.all([searchers.destroy(), light.destroy()]);
    },
  };
}
