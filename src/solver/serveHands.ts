// A solve's first schedules where one pair of hands does the work of all, for a share of the time. Used by solve.ts.
import type { Course } from './course.ts';
import type { HandsServed } from './handsServed.ts';

/** Largest share of the time it may take, and while it has not found anything. */
const TIME_SHARE = 0.35;
const FIRST_SHARE = 0.6;
/** Most steps where other ways have left something out: perhaps not everything fits. */
const FEW_STEPS = 6_000;

const STEPS_PER_PAUSE = 400;

/** Returns whether the best schedule is one of its own. */
export async function serveHands(course: Course, served: HandsServed): Promise<boolean> {
  const { search, limits, hooks } = course;
  const begunMs = hooks.now();
  const passed = (): number => (hooks.now() - begunMs) / Math.max(1, limits.untilMs - begunMs);
  const isFull = search.bestCost.omitted + search.bestCost.missing > 0;
  let isBest = false;
  const mayGoOn = (): boolean => passed() < (isBest ? TIME_SHARE : FIRST_SHARE);
  while (course.goesOn() && mayGoOn() && !served.isOver && !(isFull && served.steps >= FEW_STEPS)) {
    const layout = served.go(STEPS_PER_PAUSE, mayGoOn);
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
