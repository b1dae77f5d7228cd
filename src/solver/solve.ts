// Solves a shop problem: lay out, bound, construct, improve and prove, finish, read off. A table of contents; the parts are
// beside it.
import { type Argued, argue, withPacking } from './bounds/bestBound.ts';
import type { Bound } from './bounds/bound.ts';
import { type PackingOutcome, packLoads } from './bounds/chamberLoads.ts';
import { Paths } from './bounds/headsAndTails.ts';
import { Course, FIRST_HEAT, type SolveHooks, type SolveLimits } from './course.ts';
import { Crew } from './crew.ts';
import { HandsServed } from './handsServed.ts';
import { polish } from './polish.ts';
import { postpone } from './postpone.ts';
import type { ShopProblem } from './problem.ts';
import { randomOf } from './random.ts';
import { reorder } from './reorder.ts';
import { LEAST_ROUNDS, serveHands } from './serveHands.ts';
import { shopOf } from './shop.ts';
import { isSmall } from './smallProblem.ts';
import type { Solution } from './solution.ts';
import { keepLaneThread } from './startLaneThread.ts';

export type { SolveHooks, SolveLimits, SolveProgress } from './course.ts';
export type { Solution } from './solution.ts';

/** Schedules from nothing in other orders: at most this share of the limits, and no more once so many brought no gain. */
const ORDER_SHARE = 0.1;
const VAIN_ORDERS = 100;
/** Rounds that one of them counts as. */
const ROUNDS_PER_ORDER = 5;

/** Rounds of exchanges before the lanes set off: at most this share of the limits, and no more once so many brought no gain. */
const WARM_SHARE = 0.2;
const WARM_VAIN_ROUNDS = 200;
const WARM_ROUNDS_PER_PAUSE = 20;

/** Gap, as a share of the price, from which a schedule that was given may lie far from the cheapest. */
const SCOUT_GAP = 0.3;

/** Orders tried before one pair of hands is served, which does better. */
const FEW_ORDERS = 1;

/** With more milliseconds than this, what takes long to argue is left to the second thread, if there is one; with fewer than so many it is not argued. */
const SHARED_MS = 300;
const HURRIED_MS = 50;

/** With fewer milliseconds than this nothing is built ahead. */
const AHEAD_MS = 600;

/** Milliseconds each linear or integer program may take at most; a smaller share of a short time limit, which is
 * larger when rounds are counted and the same rounds are to give the same plan. */
const LINEAR_MS = 2000;

/** Solves a problem whose lags do not contradict each other; RangeError otherwise. */
export async function solve(problem: ShopProblem, seed: number, limits: SolveLimits, hooks: SolveHooks): Promise<Solution> {
  const startedAt = hooks.now();
  const shop = shopOf(problem);
  const { workers = 1, isAudited = false } = limits;
  const isTimed = limits.rounds === Number.POSITIVE_INFINITY;
  const leftMs = limits.untilMs - startedAt;
  // Where the clock decides and there is a second thread, that one argues what takes long, and then proves.
  const isArguedElsewhere = isTimed && workers > 1 && leftMs > SHARED_MS;
  // A schedule that is given is better than what the beam begins with.
  const serves = limits.startFrom === undefined && limits.rounds >= LEAST_ROUNDS;
  const crew = new Crew(shop, seed, {
    workers,
    isAudited,
    argues: isArguedElsewhere,
    // Its steps on another thread are not counted.
    serves: serves && isTimed,
    now: hooks.now,
    keepThread: keepLaneThread,
  });
  try {
    const paths = new Paths(shop, problem);
    // The linear programs run in a thread of their own meanwhile.
    const packed = packLoads(shop, paths, linearMs(limits, startedAt));
    const argued = argue(shop, paths, isArguedElsewhere || (isTimed && leftMs < HURRIED_MS));
    if (isTimed) crew.proveAhead(withPacking(problem, argued, 0).value);
    // While they run this thread has nothing else to do. Short of time, a first plan comes before it.
    if (isTimed && leftMs > AHEAD_MS && !(await isSettled(packed))) crew.prepare();
    const packing = await packed;
    const boundOf = (all: Argued): Bound => withPacking(problem, all, floorOf(packing));
    const course = new Course(shop, seed, limits, hooks, startedAt, boundOf(argued), packing);
    if (isArguedElsewhere) course.listen = () => (crew.argued === null ? null : boundOf(crew.argued));
    const served = serves ? HandsServed.of(shop, randomOf(seed)) : null;
    const orders = course.search.construct();
    await construct(course, orders, served === null ? Number.POSITIVE_INFINITY : FEW_ORDERS);
    const isServed = served !== null && (await serveHands(course, served));
    if (served !== null && !isServed && course.goesOn()) await construct(course, orders, Number.POSITIVE_INFINITY);
    if (!isServed && !isSmall(problem)) await tryOrders(course, reorder(course.search, randomOf(seed)));
    if (!isServed) await warmUp(course);
    await searchOn(course, crew);
    finish(course);
    return course.solution('effort');
  } finally {
    await crew.stop();
  }
}

/** Whether a promise is settled by the next turn of the event loop. */
function isSettled(promise: Promise<unknown>): Promise<boolean> {
  const nextTurn = new Promise<false>((resume) => setImmediate(() => resume(false)));
  return Promise.race([promise.then(() => true as const), nextTurn]);
}

function linearMs(limits: SolveLimits, startedAt: number): number {
  const share = limits.rounds === Number.POSITIVE_INFINITY ? 8 : 2;
  return Math.max(1, Math.min(LINEAR_MS, (limits.untilMs - startedAt) / share));
}

function floorOf(outcome: PackingOutcome): number {
  if (outcome.packing !== null) return outcome.packing.floor;
  return outcome.because === 'too-slow' ? outcome.floor : 0;
}

/** First schedules, by several orders of the blocks: one, and more as long as there is no reason to stop. */
async function construct(course: Course, orders: Iterator<void>, most: number): Promise<void> {
  for (let k = 0; k < most && orders.next().done !== true; k++) {
    await course.pause();
    course.report();
    if (!course.goesOn()) return;
  }
}

/** Other orders, while they bring something. */
async function tryOrders(course: Course, orders: Iterator<boolean>): Promise<void> {
  const { search, hooks, limits } = course;
  const until = hooks.now() + ORDER_SHARE * (limits.untilMs - hooks.now());
  let vain = 0;
  while (course.goesOn() && vain < VAIN_ORDERS && course.rounds < ORDER_SHARE * limits.rounds && hooks.now() < until) {
    course.rounds += ROUNDS_PER_ORDER;
    const before = search.bestCost;
    vain = orders.next().value === true ? 0 : vain + 1;
    if (search.bestCost !== before) course.report();
    await course.pause();
  }
  search.goBackToBest();
}

/** Exchanges, while they bring something: the lanes set off from a fair schedule. */
async function warmUp(course: Course): Promise<void> {
  const { search, hooks, limits } = course;
  const until = Math.min(limits.untilMs, hooks.now() + WARM_SHARE * (limits.untilMs - hooks.now()));
  const mostRounds = course.rounds + WARM_SHARE * limits.rounds;
  let vain = 0;
  while (course.goesOn() && vain < WARM_VAIN_ROUNDS && course.rounds < mostRounds && hooks.now() < until) {
    course.rounds++;
    vain++;
    if (search.round(FIRST_HEAT)) {
      vain = 0;
      course.report();
    }
    if (course.rounds % WARM_ROUNDS_PER_PAUSE === 0) await course.pause();
  }
}

/** The lanes improve and prove until there is a reason to stop. */
async function searchOn(course: Course, crew: Crew): Promise<void> {
  const { limits } = course;
  if (!course.goesOn()) return;
  // Whoever asks whether a price can be met wants the proof as much as the plan.
  const isScouted = limits.startFrom !== undefined && limits.enough === undefined && course.gap > SCOUT_GAP;
  crew.begin(course.news(), isScouted);
  const warmed = course.rounds;
  let lastGain = course.rounds;
  while (course.goesOn()) {
    const isGain = await crew.work({ heat: course.heat(), roundsLeft: limits.rounds - course.rounds, untilMs: limits.untilMs });
    course.rounds = warmed + crew.rounds;
    if (isGain) {
      course.take(crew.news);
      lastGain = course.rounds;
      course.report();
    }
    const isFlat = course.rounds - lastGain >= (limits.flatRounds ?? Number.POSITIVE_INFINITY);
    if (course.goesOn() && (crew.isDone || isFlat)) course.stopped = 'effort';
    await course.pause();
  }
  await crew.stop();
  course.take(crew.news);
  if (course.isProved) course.stopped = 'proved';
}

/** What a baker would point at: dear or missing trays, a start too early, needless waits and changes. */
function finish({ search, shop, hooks, limits }: Course): void {
  const mayGoOn = (): boolean => !hooks.isCancelled() && hooks.now() < limits.fillInUntilMs;
  search.goBackToBest();
  search.dropDear(mayGoOn);
  search.goBackToBest();
  search.fillIn(mayGoOn);
  search.goBackToBest();
  if (shop.problem.prices.fromFirstMark) postpone(search, mayGoOn);
  search.goBackToBest();
  polish(search, mayGoOn);
  search.goBackToBest();
}
