// How many trays a morning takes with every one ready on time: of the day's mix or of one product. Found by planning, limited
// by proof; the two are told apart. Used by compare.
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { type Asking, askOnTime, secondsLeft } from './asking.ts';
import { orderedTrays, scaledScenario, traysOfProduct } from './capacity/scaledOrders.ts';
import type { WorkKind } from './capacity/trayWork.ts';
import { overfull } from './capacity/workLimit.ts';

/** Trays of a day at most, as many as a scenario may order. */
const MOST_TRAYS = 2000;

/** Share of the time that one question of "all on time with so many?" gets at most, and the least it needs to be of use. */
const QUESTION_SHARE = 0.5;
const LEAST_SECONDS = 0.2;

/** The first step up, as a share of the day's trays. */
const FIRST_STEP_SHARE = 0.1;

export type CapacityQuestion = {
  readonly scenario: Scenario;
  /** Product whose trays are added; absent: the day's mix. */
  readonly of?: string;
  /** So many more (fewer when below 0) are known to work, by this plan of the scenario scaled so, or of a stricter one. */
  readonly known?: { readonly extra: number; readonly plan: Plan };
  /** A plan to begin with where nothing is known to work, however late it is. */
  readonly start?: Plan;
  /** Seconds for all of it; within the time that is left anyway. */
  readonly seconds?: number;
  /** Rounds of search for each question. */
  readonly effort?: number;
};

export type CapacityFound = {
  readonly dayTrays: number;
  /** Trays more than the day's for which a plan has all of them ready on time; below 0: fewer. */
  readonly extra: number;
  /** The plan that shows it, of the scenario scaled so under goals of its own; null when nothing is on time, or not even one was found. */
  readonly plan: Plan | null;
  /** So many more at most: proved. null: not proved. */
  readonly limit: number | null;
  readonly proof: 'work' | 'search' | null;
  /** What has no time for one tray more than `limit`, of a proof by work. */
  readonly overfull: WorkKind | null;
};

type WorkLimit = { readonly extra: number; readonly kind: WorkKind };

/** The largest number of extra trays that no argument by work rules out; null when none is ruled out. */
export function workLimit(scenario: Scenario, of?: string): WorkLimit | null {
  // A day under way has work behind it already, which the argument does not know.
  if (scenario.underway !== undefined) return null;
  const least = -movable(scenario, of);
  const most = MOST_TRAYS - orderedTrays(scenario);
  const kindAt = (extra: number): WorkKind | null => {
    const scaled = scaledScenario(scenario, extra, of);
    return scaled === null ? null : (overfull(scaled)?.kind ?? null);
  };
  let kind = kindAt(most);
  if (kind === null) return null;
  let [works, fails] = [least, most];
  while (fails - works > 1) {
    const middle = Math.floor((works + fails) / 2);
    const found = kindAt(middle);
    if (found === null) works = middle;
    else [fails, kind] = [middle, found];
  }
  return { extra: works, kind };
}

/** Trays that can be taken away. */
function movable(scenario: Scenario, of: string | undefined): number {
  return of === undefined ? orderedTrays(scenario) : traysOfProduct(scenario, of);
}

/** All is to be ready by the last time wanted: what comes after it is no part of the question, and a shorter day is easier to judge. */
function untilLastOrder(scenario: Scenario): Scenario {
  const { orders, day, underway } = scenario;
  if (underway !== undefined) return scenario;
  const [last] = [...orders].sort((a, b) => rankOf(b.readyBy) - rankOf(a.readyBy));
  return last === undefined ? scenario : { ...scenario, day: { ...day, until: last.readyBy } };
}

/** Clock texts in the order of their times: days first, then the time of day. */
function rankOf(text: string): number {
  const [, days = '0', hours = '0', minutes = '0'] = /^(?:([+-]\d)d )?(\d\d):(\d\d)$/.exec(text) ?? [];
  return Number(days) * 1440 + Number(hours) * 60 + Number(minutes);
}

class Search {
  private readonly question: CapacityQuestion;
  private readonly asking: Asking;
  private readonly untilMs: number;
  private readonly least: number;
  /** Known to work. */
  works: number;
  plan: Plan | null;
  /** Proved not to work; one above the limit. */
  fails: number;
  proof: 'work' | 'search' | null = null;
  /** Not found to work, or proved not to: nothing above is asked. */
  private ceiling: number;

  constructor(question: CapacityQuestion, asking: Asking, byWork: WorkLimit | null) {
    const { scenario, of, known, seconds } = question;
    this.question = question;
    this.asking = asking;
    this.untilMs = Math.min(asking.untilMs, asking.now() + (seconds ?? Number.POSITIVE_INFINITY) * 1000);
    this.least = -movable(scenario, of);
    this.works = known?.extra ?? this.least;
    this.plan = known?.plan ?? null;
    this.fails = byWork === null ? MOST_TRAYS - orderedTrays(scenario) + 1 : byWork.extra + 1;
    if (byWork !== null) this.proof = 'work';
    this.ceiling = this.fails;
  }

  private secondsLeft(): number {
    return Math.min(secondsLeft(this.asking), (this.untilMs - this.asking.now()) / 1000);
  }

  hasTime(): boolean {
    return !this.asking.cancelled() && this.secondsLeft() >= LEAST_SECONDS;
  }

  /** Asks whether so many more can all be on time. */
  private async askFor(extra: number, share: number): Promise<void> {
    const { scenario, of, effort } = this.question;
    const scaled = scaledScenario(scenario, extra, of);
    if (scaled === null) return;
    const seconds =
      this.secondsLeft() === Number.POSITIVE_INFINITY ? undefined : Math.max(LEAST_SECONDS, share * this.secondsLeft());
    const startFrom = this.plan ?? this.question.start;
    const answer = await askOnTime(untilLastOrder(scaled), this.asking, {
      ...(effort === undefined ? {} : { effort }),
      ...(seconds === undefined ? {} : { seconds }),
      ...(startFrom === undefined ? {} : { startFrom }),
    });
    if (answer.is === 'possible') {
      this.works = extra;
      this.plan = answer.plan;
      return;
    }
    this.ceiling = extra;
    if (answer.is !== 'impossible') return;
    this.fails = extra;
    this.proof = 'search';
  }

  /** From what is known to work upwards, in steps that double; the first is a tenth of the day. */
  async climb(): Promise<void> {
    const first = Math.max(1, Math.round(FIRST_STEP_SHARE * orderedTrays(this.question.scenario)));
    for (let step = first; this.works + 1 < this.ceiling && this.hasTime(); step *= 2)
      await this.askFor(Math.min(this.works + step, this.ceiling - 1), QUESTION_SHARE);
  }

  /** Nothing is known to work: half the trays first, which is soon found, then a quarter and so on, until something does. */
  async descend(): Promise<void> {
    let kept = Math.min(0, this.fails - 1) - this.least;
    while (this.plan === null && kept > 0 && this.hasTime()) {
      kept = kept === 1 ? 0 : Math.ceil(kept / 2);
      await this.askFor(this.least + Math.max(1, kept), QUESTION_SHARE);
    }
  }

  /** Between what works and what was not found to. */
  async halve(): Promise<void> {
    while (this.ceiling - this.works > 1 && this.hasTime())
      await this.askFor(Math.floor((this.works + this.ceiling) / 2), QUESTION_SHARE);
  }

  /** One more than found, with all the time that is left: found after all, or proved impossible. */
  async press(): Promise<void> {
    while (this.fails - this.works > 1 && this.hasTime()) {
      const before = this.works;
      this.ceiling = this.fails;
      await this.askFor(this.works + 1, 1);
      if (this.works === before) return;
    }
  }
}

/** Looks for the most trays the morning takes. Without a time limit, `effort` ends each question. */
export async function capacity(question: CapacityQuestion, asking: Asking): Promise<CapacityFound> {
  const { scenario, of } = question;
  const byWork = workLimit(scenario, of);
  const search = new Search(question, asking, byWork);
  if (search.plan === null) await search.descend();
  await search.climb();
  await search.halve();
  if (asking.untilMs !== Number.POSITIVE_INFINITY || question.seconds !== undefined) await search.press();
  const { works, plan, fails, proof } = search;
  return {
    dayTrays: orderedTrays(scenario),
    extra: works,
    plan,
    limit: proof === null ? null : Math.max(works, fails - 1),
    proof,
    overfull: proof === 'work' ? (byWork?.kind ?? null) : null,
  };
}
