// From a plan to the course of its day: what each step waits for when real minutes are not those of the plan. A table of contents.
import type { BatchRun, JudgedDay, StepRun, TrayRun } from '../../check/judgedDay.ts';
import { judgedDayOf } from '../../check/judgedDay.ts';
import type { OvenLoad } from '../../check/ovenLoads.ts';
import { placeKindOf, roomOf } from '../../check/places.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { USUAL_SPREAD } from '../../model/spread.ts';
import { breakMoments } from './breakMoments.ts';
import type { Course, Watch } from './course.ts';
import { at, CourseDraft } from './courseDraft.ts';
import { heatMoments } from './heatMoments.ts';
import { bakeAfter, type LoadMoments, loadMoments } from './loadMoments.ts';
import { moreMinutes } from './stepMinutes.ts';
import { type Before, beginAfter, type StepPlace, stepMoment } from './stepMoments.ts';

/** Puts the steps of a day into a draft, batch by batch. */
class DayInMoments {
  readonly draft: CourseDraft;
  readonly loads = new Map<OvenLoad, LoadMoments>();
  private readonly day: JudgedDay;

  constructor(day: JudgedDay) {
    this.day = day;
    this.draft = new CourseDraft(day.scenario.underway?.now ?? 0);
  }

  private placeOf(run: StepRun, pace: number, of: string): StepPlace {
    const { scenario } = this.day;
    return {
      run,
      spread: scenario.spread ?? USUAL_SPREAD,
      more: moreMinutes(run),
      pace,
      of,
      roomOf: ({ step, named }) => {
        const kind = placeKindOf(step);
        const id = named.task.place?.id;
        const room = kind === undefined || id === undefined ? undefined : roomOf(scenario, kind)?.get(id);
        return room === undefined ? undefined : { id: `${kind} ${id}`, room };
      },
    };
  }

  private loadOf(run: StepRun, load: OvenLoad): LoadMoments {
    const known = this.loads.get(load);
    if (known !== undefined) return known;
    const { scenario, decks } = this.day;
    // A load that goes in together fills its deck, however few its trays.
    const roomOf = (id: string): number => (decks.get(id)?.oven.loading === 'together' ? 1 : (decks.get(id)?.deck.trays ?? 1));
    const made = loadMoments(this.draft, run, load, { spread: scenario.spread ?? USUAL_SPREAD, roomOf });
    this.loads.set(load, made);
    return made;
  }

  addBatch(batch: BatchRun): void {
    const { draft } = this;
    const pace = draft.addChance();
    const runs = batch.runs.filter((run) => run !== undefined);
    const watches: Watch[] = [];
    let before: Before | null = null;
    for (const run of runs) {
      const moment = draft.addMoment(run.begins, 'sheet');
      if (before !== null) watches.push({ moment, limit: before.limit });
      beginAfter(draft, moment, before);
      before = stepMoment(draft, this.placeOf(run, pace, batch.dough.id), moment);
    }
    this.addTrays(batch, pace, before, watches);
  }

  /** The first tray ends the batch's last step; the others begin within the minutes their dough allows after it. */
  private addTrays(batch: BatchRun, pace: number, before: Before | null, watches: readonly Watch[]): void {
    const begins = (tray: TrayRun): number => tray.runs[0]?.begins ?? 0;
    const [first, ...others] = [...batch.trays].sort((a, b) => begins(a) - begins(b));
    if (first === undefined) return;
    const moment = this.addTray(first, pace, before, (begun) =>
      before === null ? watches : [...watches, { moment: begun, limit: before.limit }],
    );
    const batchWatches = before === null ? watches : [...watches, { moment, limit: before.limit }];
    const within = at(moment, batch.dough.shapeWithin);
    for (const tray of others) {
      const limit = begins(tray) === this.draft.plannedAt(moment) ? (before?.limit ?? within) : within;
      const own = before === null ? null : { ...before, limit, leave: () => undefined };
      this.addTray(tray, pace, own, (begun) => [...batchWatches, { moment: begun, limit: within }]);
    }
  }

  /** Adds a tray and returns its first moment. `watchesFrom`: where its dough stands too long until then. */
  private addTray(
    tray: TrayRun,
    pace: number,
    fromBatch: Before | null,
    watchesFrom: (first: number) => readonly Watch[],
  ): number {
    const { draft } = this;
    const runs = tray.runs.filter((run) => run !== undefined);
    const bread: Watch[] = [];
    const dough: Watch[] = [];
    let before = fromBatch;
    let first = -1;
    for (const run of runs) {
      const place = this.placeOf(run, pace, tray.product.id);
      const load = run.load === undefined ? undefined : this.loadOf(run, run.load);
      const moment = load?.loading ?? draft.addMoment(run.begins, 'sheet');
      if (first < 0) {
        first = moment;
        dough.push(...watchesFrom(moment));
      } else if (before?.isDough === true && bread.length === 0) dough.push({ moment, limit: before.limit });
      if (load === undefined) {
        beginAfter(draft, moment, before);
        before = stepMoment(draft, place, moment);
      } else {
        before = bakeAfter(draft, load, before, run.step.waitUpTo);
        bread.push(load.bakesTooLong);
      }
    }
    this.readyTray(tray, runs, before, dough, bread);
    return first;
  }

  private readyTray(
    tray: TrayRun,
    runs: readonly StepRun[],
    before: Before | null,
    dough: readonly Watch[],
    bread: readonly Watch[],
  ): void {
    const { draft } = this;
    const last = runs[runs.length - 1];
    if (last === undefined || before === null) return;
    let ready = before.endsAlone?.();
    if (ready === undefined) {
      ready = draft.addMoment(last.done, 'follows');
      draft.comesAfter(ready, before.ready);
    }
    draft.addTray({ id: tray.id, product: tray.product.id, ready, dough, bread });
  }
}

/**
 * The course of a plan's day. `scenario` says what each step takes by itself: the plan's own, or the one a careful plan was
 * derived from.
 */
export function courseOf(scenario: Scenario, plan: Plan): Course {
  const day = judgedDayOf(scenario, plan);
  const moments = new DayInMoments(day);
  for (const batch of day.batches) moments.addBatch(batch);
  const loads = [...moments.loads.values()];
  for (const deck of day.decks.values())
    heatMoments(
      moments.draft,
      deck,
      loads.filter((load) => load.deck === deck.id),
    );
  breakMoments(moments.draft, plan);
  return moments.draft.settle(new Map(plan.bakehouse.people.map(({ id, hours }) => [id, hours.end])));
}
