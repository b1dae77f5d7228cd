// A solve's first schedules where one pair of hands does the work of all, for a share of the time. Used by solve.ts.
import type { Course } from './course.ts';
import { HandsServed } from './handsServed.ts';
import { randomOf } from './random.ts';

/** Largest share of the time it may take. */
const TIME_SHARE = 0.35;
/** Most steps where other ways have left something out: perhaps not everything fits. */
const FEW_STEPS = 6_000;

const STEPS_PER_PAUSE = 400;

/** Returns whether the best schedule is one of its own. */
export async function serveHands(course: Course, seed: number): Promise<boolean> {
  const { search, shop, limits, hooks } = course;
  const served = HandsServed.of(shop, randomOf(seed));
  if (served === null) return false;
  const until = Math.min(limits.untilMs, hooks.now() + TIME_SHARE * (limits.untilMs - hooks.now()));
  const isFull = search.bestCost.omitted + search.bestCost.missing > 0;
  const mayGoOn = (): boolean => hooks.now() < until;
  let isBest = false;
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
