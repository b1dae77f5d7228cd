// A solve's first schedules where one pair of hands does the work of all: built by the beam, for a share of the limits. Used by
// solve.ts.
import { beamOf, STEPS_PER_ROUND } from './beam/beam.ts';
import type { Course } from './course.ts';
import { randomOf } from './random.ts';

/** Largest share of the time and of the rounds it may take, and most rounds. */
const TIME_SHARE = 0.35;
const ROUND_SHARE = 0.2;
const MOST_ROUNDS = 2000;
/** Most rounds where other ways have left something out: perhaps not everything fits. */
const FEW_ROUNDS = 300;

const STEPS_PER_PAUSE = 400;

/** Returns whether the best schedule is one of its own. */
export async function serveHands(course: Course, seed: number): Promise<boolean> {
  const { search, shop, limits, hooks } = course;
  const beam = beamOf(shop, randomOf(seed));
  if (beam === null || !course.goesOn()) return false;
  const until = Math.min(limits.untilMs, hooks.now() + TIME_SHARE * (limits.untilMs - hooks.now()));
  const before = course.rounds;
  const isFull = search.bestCost.omitted + search.bestCost.missing > 0;
  const most = Math.min(isFull ? FEW_ROUNDS : MOST_ROUNDS, ROUND_SHARE * limits.rounds);
  let isBest = false;
  let pausedAt = 0;
  for (const layout of beam.schedules()) {
    course.rounds = before + Math.floor(beam.steps / STEPS_PER_ROUND);
    const known = search.bestCost.total;
    if (layout !== null && search.adopt(layout).total < known) {
      isBest = true;
      course.report();
    }
    if (!course.goesOn() || course.rounds - before >= most || hooks.now() >= until) break;
    if (beam.steps - pausedAt < STEPS_PER_PAUSE) continue;
    pausedAt = beam.steps;
    await hooks.pause();
  }
  search.goBackToBest();
  return isBest;
}
