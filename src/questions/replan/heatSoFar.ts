// The decks' set points as the day went so far: a move waits for the bakes it was to follow, and a bake for the moves before it.
import type { PlanDeck, SetPoint } from '../../model/plan.ts';
import type { Course } from './course.ts';
import type { Job } from './runs.ts';

type Move = { readonly planned: SetPoint; start: number | null };

export class HeatSoFar {
  private readonly movesOf: ReadonlyMap<string, readonly Move[]>;
  private readonly bakesOf = new Map<string, Job[]>();
  private readonly courses: ReadonlyMap<string, Course>;
  private readonly isLost: (job: Job) => boolean;

  constructor(
    decks: readonly PlanDeck[],
    settledUntil: number,
    jobs: readonly Job[],
    courses: ReadonlyMap<string, Course>,
    isLost: (job: Job) => boolean,
  ) {
    this.movesOf = new Map(
      decks.map(({ id, setPoints }) => [
        id,
        setPoints.map((planned) => ({ planned, start: planned.start < settledUntil ? planned.start : null })),
      ]),
    );
    for (const job of jobs) {
      if (job.step.do !== 'bake' || job.task.place === undefined) continue;
      const own = this.bakesOf.get(job.task.place.id) ?? [];
      own.push(job);
      this.bakesOf.set(job.task.place.id, own);
    }
    this.courses = courses;
    this.isLost = isLost;
  }

  /** Whether a bake leaves a move waiting at a minute. */
  private holdsUp(job: Job, { planned }: Move, minute: number): boolean {
    const { task } = job;
    if (this.isLost(job) || task.start >= planned.start) return false;
    const course = this.courses.get(task.id);
    if (course === undefined) return true;
    if (task.end <= planned.start) return course.end === null || course.end > minute;
    return minute < course.start + planned.start - task.start;
  }

  /** Begins the moves that can begin at a minute; whether there was one. */
  begin(minute: number): boolean {
    let hasBegun = false;
    for (const [deck, moves] of this.movesOf) {
      moves.forEach((move, index) => {
        if (move.start !== null || move.planned.start > minute) return;
        const before = moves[index - 1];
        const isBusy =
          before !== undefined && (before.start === null || before.start + before.planned.end - before.planned.start > minute);
        if (isBusy || (this.bakesOf.get(deck) ?? []).some((job) => this.holdsUp(job, move, minute))) return;
        move.start = minute;
        hasBegun = true;
      });
    }
    return hasBegun;
  }

  /** Whether the deck has moved as it was to before a bake that would be loaded from a minute on. */
  mayBegin(job: Job, minute: number): boolean {
    if (job.step.do !== 'bake' || job.task.place === undefined) return true;
    const start = minute + job.load;
    return (this.movesOf.get(job.task.place.id) ?? []).every(({ planned, start: began }) => {
      if (planned.start > job.task.start) return true;
      if (began === null) return false;
      return start >= began + Math.min(planned.end, job.task.start) - planned.start;
    });
  }

  /** Moves that have begun by now; one under way as it was set, to its end. */
  until(now: number): readonly PlanDeck[] {
    return [...this.movesOf].map(([id, moves]) => ({
      id,
      setPoints: moves.flatMap(({ planned, start }): SetPoint[] =>
        start === null || start >= now ? [] : [{ ...planned, start, end: start + planned.end - planned.start }],
      ),
    }));
  }

  /** Temperature of each deck that has moved, at a minute. */
  temperaturesC(now: number): ReadonlyMap<string, number> {
    return new Map(
      this.until(now).flatMap(({ id, setPoints }) => {
        const last = setPoints.at(-1);
        if (last === undefined) return [];
        const part = Math.min(1, (now - last.start) / (last.end - last.start));
        return [[id, last.fromC + (last.toC - last.fromC) * part] as const];
      }),
    );
  }

  /** The moves that were to begin before now and have not, by deck. */
  heldUp(now: number): readonly { readonly deck: string; readonly planned: SetPoint }[] {
    return [...this.movesOf].flatMap(([deck, moves]) =>
      moves.filter(({ planned, start }) => planned.start < now && start === null).map(({ planned }) => ({ deck, planned })),
    );
  }
}
