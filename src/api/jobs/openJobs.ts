// Opens the work of the service: the line, the threads and the store together. Called where the service is put together.
import { availableParallelism } from 'node:os';
import type { Store } from '../../store/store.ts';
import { LightLine } from '../light/lightLine.ts';
import type { Report } from '../telling/report.ts';
import { type Crew, LIGHT_THREADS } from './crew.ts';
import { JobBook } from './jobBook.ts';
import type { Jobs } from './jobs.ts';
import { openCrew } from './openCrew.ts';
import { Wellness } from './wellness.ts';
import type { Work } from './work.ts';

export type JobsOptions = {
  readonly store: Store;
  /** A clock in milliseconds. */
  readonly now: () => number;
  /** The time now: RFC 3339 in UTC, to the millisecond. */
  readonly instant: () => string;
  /** Searches at once, 1 or more. Default: one for each core. */
  readonly threads?: number;
  /** How many may wait, 0 or more. Default 64. */
  readonly places?: number;
  /** How many may wait to be read or drawn, 0 or more. Default 64. */
  readonly lightPlaces?: number;
  /** Longest search, in seconds. */
  readonly mostSeconds: number;
  /** Version of this program. */
  readonly version: string;
  /** Told of every fault of ours. */
  readonly report: Report;
  /** Told of all work that has ended. */
  readonly onEnd?: (work: Work) => void;
  /** The threads. Default: threads. */
  readonly crew?: Crew;
};

const USUAL_PLACES = 64;
const USUAL_LIGHT_PLACES = 64;

/** Milliseconds for the first look at whether all is well. */
const WARM_UP_MS = 5_000;

/** Work that was accepted and had not ended when the service last did is taken up again before this resolves. */
export async function openJobs(options: JobsOptions): Promise<Jobs> {
  const { now, version, report } = options;
  const threads = options.threads ?? availableParallelism();
  const crew = options.crew ?? openCrew({ threads, version, report });
  const book = new JobBook({
    ...options,
    threads,
    places: options.places ?? USUAL_PLACES,
    crew,
    onEnd: options.onEnd ?? (() => {}),
  });
  const light = new LightLine({
    run: (kind, given) => crew.light(kind, given),
    threads: LIGHT_THREADS,
    places: options.lightPlaces ?? USUAL_LIGHT_PLACES,
  });
  const wellness = new Wellness({ now, report, planTinyDay: () => crew.planTinyDay() });
  // Who asks first is not to wait for what threads load.
  await Promise.all([crew.warmUp(), wellness.isWell(WARM_UP_MS)]);
  await book.takeUp();
  return {
    add: (ask, client, asked, key) => book.add(ask, client, asked, key),
    admit: () => book.admit(),
    find: (id) => book.find(id),
    made: (id) => book.made(id),
    wait: (id, ms, gone) => book.wait(id, ms, gone),
    follow: (id, told) => book.follow(id, told),
    stop: (id) => book.stop(id),
    abandon: (id) => book.abandon(id),
    get running() {
      return book.running;
    },
    get waiting() {
      return book.waiting;
    },
    get lightWaiting() {
      return light.waiting;
    },
    get isClosing() {
      return book.isClosing;
    },
    isWell: (ms) => wellness.isWell(ms),
    light: (kind, given, asker) => light.do(kind, given, asker),
    close: (graceMs) => book.close(graceMs),
    end: async () => {
      light.close();
      await crew.close();
    },
  };
}
