// A solve's first schedules where one pair of hands does the work of all, for a share of the limits. Used by solve.ts.
import type { Course } from './course.ts';
import type { HandsServed } from './handsServed.ts';

/** Largest share of the limits it may take, and while it has not found anything. */
const SHARE = 0.35;
const FIRST_SHARE = 0.6;
/** Most steps where other ways have left something out: perhaps not everything fits. */
const FEW_STEPS = 6_000;

const STEPS_PER_PAUSE = 2_000;

/** Steps that count as a round: they take about as long. */
const STEPS_PER_ROUND = 200;

/** Fewer rounds than this come to nothing. */
export const LEAST_ROUNDS = 100;

/** Returns whether the best schedule is one of its own. */
export async function serveHands(course: Course, served: HandsServed): Promise<boolean> {
  const { search, limits, hooks } = course;
  const begunMs = hooks.now();
  const first = course.rounds;
  const passed = (): number =>
    Math.max(
      (hooks.now() - begunMs) / Math.max(1, limits.untilMs - begunMs),
      (course.rounds - first) / Math.max(1, limits.rounds - first),
    );
  const isFull = search.bestCost.omitted + search.bestCost.missing > 0;
  let isBest = false;
  const mayGoOn = (): boolean => passed() < (isBest ? SHARE : FIRST_SHARE);
  while (course.goesOn() && mayGoOn() && !served.isOver && !(isFull && served.steps >= FEW_STEPS)) {
    const layout = served.go(STEPS_PER_PAUSE, mayGoOn);
    if (limits.rounds !== Number.POSITIVE_INFINITY) course.rounds = first + Math.ceil(served.steps / STEPS_PER_ROUND);
    const known = search.bestCost.total;
    if (layout !== null && search.adopt(layout).total < known) {
      isBest = true;
      course.report();
    }
    await course.pause();
  }
  search.goBackToBest();
  return isBest;
}
