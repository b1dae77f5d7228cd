// Threads for searches, one each, and a few beside them for what somebody waits for: light work and the question whether all is well.
// Opened by openJobs.ts.
import { fileURLToPath } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import type { Done, Given, LightKind } from '../light/lightWork.ts';
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

/** After so long without work a thread that need not be there ends. */
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
  // Always there: to start one takes longer than most light work, and they hold some 40 MB each.
  const light = pool(LIGHT_THREADS, LIGHT_THREADS, report);
  const spare = pool(0, 1, report);
  let atLightWork = 0;

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

  const doLight = async <K extends LightKind>(kind: K, given: Given<K>): Promise<Done<K>> => {
    const task: ThreadTask = { do: 'light', kind, given };
    atLightWork += 1;
    try {
      return await light.run(task);
    } finally {
      atLightWork -= 1;
    }
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
    light: doLight,
    planTinyDay: () => (atLightWork < LIGHT_THREADS ? light : spare).run(tinyDay),
    close: async () => {
      await Promise.all([searchers, light, spare].map((opened) => opened.destroy()));
    },
  };
}
