// How sure a plan is: its day gone through many times with other minutes each morning. A table of contents; used by the command.
import { type Clock, clockOf, instantAt } from '../../model/clock.ts';
import { fingerprint } from '../../model/fingerprint.ts';
import type { HowSure, OrderSure, TrayAtRisk } from '../../model/howSure.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { USUAL_SPREAD } from '../../model/spread.ts';
import { addedLateness } from './addedLateness.ts';
import type { Course } from './course.ts';
import { courseOf } from './courseOf.ts';
import { type DueProduct, dueProducts } from './dueTrays.ts';
import { Mornings } from './mornings.ts';
import { lateTrayMinutes, MorningTally } from './morningTally.ts';
import { type Through, throughMornings } from './throughMornings.ts';
import { wilson } from './wilson.ts';

/** Mornings gone through on a day of usual size, and how many of them once more for what each step adds. */
export const USUAL_MORNINGS = 10_000;
const MORNINGS_ONCE_MORE = 1000;

/** Moments over all mornings beyond which a large day gets fewer mornings, and how few it gets at least. */
const MOST_MOMENTS = 20_000_000;
const LEAST_MORNINGS = 1000;

/** Trays and people are told of from this chance of trouble on. */
const RISK = 0.05;

export type HowSureOptions = {
  /** Seed of the chances, 0 or more. Default 1. */
  readonly seed?: number;
  /** Mornings, 1 or more. Default: 10,000, fewer for days of more than about 250 trays. */
  readonly mornings?: number;
  /** Lets other work be done between two blocks of mornings. */
  readonly pause?: () => Promise<void>;
  /** Whether time is over, asked now and then; what is counted by then is told. Default: never. */
  readonly isOver?: () => boolean;
};

function usualMornings(course: Course): number {
  const fewer = Math.floor(MOST_MOMENTS / Math.max(1, course.moments.length));
  return Math.max(LEAST_MORNINGS, Math.min(USUAL_MORNINGS, fewer));
}

function ordersOf(scenario: Scenario, plan: Plan, clock: Clock, tally: MorningTally): readonly OrderSure[] {
  const instantOf = (minute: number | null): string | null => (minute === null ? null : instantAt(clock, minute));
  return scenario.orders.map(({ product, pieces }, number) => ({
    product,
    pieces,
    readyBy: plan.orders[number]?.readyBy ?? '',
    plannedReadyAt: plan.orders[number]?.readyAt ?? null,
    usuallyReadyAt: instantOf(tally.ready.readyBy(number, 0.5, tally.mornings)),
    mostlyReadyAt: instantOf(tally.ready.readyBy(number, 0.9, tally.mornings)),
    onTime: wilson(tally.onTime[number] ?? 0, tally.mornings),
  }));
}

function traysAtRisk(course: Course, tally: MorningTally): readonly TrayAtRisk[] {
  const worst = ({ late, standsTooLong, bakesTooLong }: TrayAtRisk): number =>
    Math.max(late.chance, standsTooLong.chance, bakesTooLong.chance);
  return course.trays
    .map(({ id, product }, number) => ({
      tray: id,
      product,
      late: tally.late.riskOf(number, tally.mornings),
      standsTooLong: tally.stands.riskOf(number, tally.mornings),
      bakesTooLong: tally.bakes.riskOf(number, tally.mornings),
    }))
    .filter((tray) => worst(tray) >= RISK)
    .sort((a, b) => worst(b) - worst(a) || (a.tray < b.tray ? -1 : 1));
}

function pastHours(course: Course, tally: MorningTally): HowSure['pastHours'] {
  return course.people
    .map(({ id }, number) => ({ person: id, works: tally.pastHours.riskOf(number, tally.mornings) }))
    .filter(({ works }) => works.chance >= RISK);
}

/** Minutes late when every step takes the minutes stated: one morning without any chance. */
function plannedLateness(course: Course, products: readonly DueProduct[], mornings: Mornings): number {
  mornings.run(new Float64Array(Math.max(1, course.chances) * mornings.block), 1, null);
  return lateTrayMinutes(mornings, course, products);
}

function toTenth(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}

/**
 * Goes through the day of a plan many mornings. `scenario` says what each step takes by itself and how far it strays: the plan's
 * own, or the one a careful plan was derived from.
 */
export async function howSure(scenario: Scenario, plan: Plan, options: HowSureOptions = {}): Promise<HowSure> {
  const { seed = 1, isOver = () => false, pause = () => Promise.resolve() } = options;
  const clock = clockOf(scenario);
  const course = courseOf(scenario, plan);
  const products = dueProducts(scenario, course, clock);
  const planned = plan.orders.map(({ readyAt }) => (readyAt === null ? null : minuteOfInstant(clock, readyAt)));
  const tally = new MorningTally(course, products, planned);
  const mornings = new Mornings(course);
  const through: Through = { seed, count: options.mornings ?? usualMornings(course), pause, isOver };
  await throughMornings(course, mornings, through, (chances, size) => {
    mornings.run(chances, size, null);
    tally.add(mornings);
  });
  const onceMore = { ...through, count: Math.min(MORNINGS_ONCE_MORE, tally.mornings) };
  const { hurts, hurtsMost } = await addedLateness(course, products, mornings, onceMore);
  const { name, date, timeZone } = scenario;
  return {
    howSure: 1,
    scenario: { name, date, timeZone, fingerprint: fingerprint(scenario) },
    seed,
    mornings: tally.mornings,
    spread: scenario.spread ?? USUAL_SPREAD,
    allOnTime: wilson(tally.allOnTime, tally.mornings),
    lateTrayMinutes: toTenth(tally.lateTrayMinutes / tally.mornings),
    plannedLateTrayMinutes: toTenth(plannedLateness(course, products, mornings)),
    orders: [...ordersOf(scenario, plan, clock, tally)],
    traysAtRisk: [...traysAtRisk(course, tally)],
    pastHours: pastHours(course, tally),
    hurts: [...hurts],
    hurtsMost,
  };
}

function minuteOfInstant(clock: Clock, instant: string): number {
  return Math.round((Date.parse(instant) - clock.startEpochMs) / 60_000);
}
