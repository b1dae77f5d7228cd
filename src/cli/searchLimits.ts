// How long and how hard a plan is searched for, from what a person asked. Used by `plan` and `post`.
import type { PlanningOptions } from '../planning.ts';
import type { Parts } from './parts.ts';
import type { PlanRequest } from './request.ts';
import type { Surroundings } from './surroundings.ts';

/** What of a request matters here. */
export type Asked = Pick<PlanRequest, 'out' | 'svg' | 'seconds' | 'effort' | 'seed' | 'workers' | 'howSure'>;

export type SearchLimits = Pick<PlanningOptions, 'seconds' | 'effort' | 'seed' | 'workers' | 'stopsWhenFlat'>;

/** Longest search in seconds when the person sets no limit. */
const USUAL_SECONDS = 10;

/** Share of the time limit that drawing and writing get at most. */
const WRITING_SHARE = 0.25;

/** Share of the time limit, and seconds, kept at most for how sure the plan is. */
const HOW_SURE_SHARE = 0.25;
const HOW_SURE_SECONDS = 1.5;

/** Most threads a search can use. */
const MOST_WORKERS = 2;

export function wantsFiles({ out, svg }: Asked): boolean {
  return out !== undefined || svg !== undefined;
}

/** What is left of a time limit before drawing and writing, which take about as long as loading and reading did just before. */
export function secondsToAnswer(seconds: number, asked: Asked, { now, startedAtMs }: Surroundings): number {
  return wantsFiles(asked) ? seconds - Math.min(WRITING_SHARE * seconds, (now() - startedAtMs) / 1000) : seconds;
}

/** What the planner gets of it. */
function secondsToPlan(seconds: number, asked: Asked, surroundings: Surroundings): number {
  const left = secondsToAnswer(seconds, asked, surroundings);
  return asked.howSure === true ? left - Math.min(HOW_SURE_SHARE * seconds, HOW_SURE_SECONDS) : left;
}

/** Threads that search. */
export function workersFor({ workers }: Pick<Asked, 'workers'>, { processors }: Surroundings): number {
  return workers ?? Math.min(MOST_WORKERS, processors);
}

export function searchLimits(asked: Asked, { defaultEffort }: Parts, surroundings: Surroundings): SearchLimits {
  const { effort, seed } = asked;
  const seeded = seed === undefined ? {} : { seed };
  const isUnlimited = asked.seconds === undefined && effort === undefined;
  const seconds = isUnlimited ? USUAL_SECONDS : asked.seconds;
  const rounds = isUnlimited ? defaultEffort : effort;
  return {
    ...(seconds === undefined ? {} : { seconds: secondsToPlan(seconds, asked, surroundings) }),
    ...(rounds === undefined ? {} : { effort: rounds }),
    workers: workersFor(asked, surroundings),
    stopsWhenFlat: isUnlimited,
    ...seeded,
  };
}
