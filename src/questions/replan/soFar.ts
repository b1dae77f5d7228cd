// Goes through the day up to now as it went: people follow the order of the plan, and whatever an event holds up waits until its
// tray, its place and its hands are there. Minute by minute, because what waits for what is then plain to see.
import type { HandsOn, PlanDeck } from '../../model/plan.ts';
import type { OutOfUse } from '../../model/underway.ts';
import { alreadyBusy, alreadyFull, type Contradiction, cannotHaveEnded, notBegunBefore } from './contradiction.ts';
import type { Course } from './course.ts';
import type { Diary } from './diary.ts';
import type { Fact } from './facts.ts';
import { HeatSoFar } from './heatSoFar.ts';
import type { Rooms, Stay } from './rooms.ts';
import { type Job, restsByItself } from './runs.ts';

/** Jobs that begin as one: a single one, or the bakes of a load. */
type Act = { readonly jobs: readonly Job[]; readonly plannedBegin: number; readonly fact: Fact | undefined };

export type Given = {
  readonly now: number;
  /** By when each was to begin. */
  readonly jobs: readonly Job[];
  readonly acts: readonly (readonly Job[])[];
  readonly facts: ReadonlyMap<string, Fact>;
  readonly lost: ReadonlySet<string>;
  readonly out: readonly OutOfUse[];
  readonly diary: Diary;
  readonly rooms: Rooms;
  readonly decks: readonly PlanDeck[];
  /** Set points that began before this minute are known to have moved as they did. */
  readonly settledUntil: number;
  readonly says: (minute: number) => string;
};

/** What is told of a load is told of all its trays; what is told now counts before what was known. */
function factOf(jobs: readonly Job[], facts: ReadonlyMap<string, Fact>): Fact | undefined {
  const own = jobs.flatMap((job) => facts.get(job.task.id) ?? []);
  return own.find(({ isKnown }) => !isKnown) ?? own[0];
}

const isUnload = (hands: HandsOn): boolean => hands.for === 'unload';

export class SoFar {
  readonly courses = new Map<string, Course>();
  /** Trays lost when their deck went out of use. */
  readonly lostInOven = new Map<string, OutOfUse>();
  /** Mixes cut short when their bowl went out of use: mixed again. */
  readonly mixedAgain = new Map<string, OutOfUse>();
  readonly contradictions: Contradiction[] = [];
  readonly heat: HeatSoFar;
  private readonly given: Given;
  private readonly acts: readonly Act[];
  private readonly actOf: ReadonlyMap<string, Act>;
  private readonly jobById: ReadonlyMap<string, Job>;
  private readonly followers = new Map<string, Job[]>();
  private readonly baking = new Set<Course>();

  constructor(given: Given) {
    this.given = given;
    this.acts = given.acts.map((jobs) => ({
      jobs,
      plannedBegin: Math.min(...jobs.map((job) => job.plannedBegin)),
      fact: factOf(jobs, given.facts),
    }));
    this.actOf = new Map(this.acts.flatMap((act) => act.jobs.map((job) => [job.task.id, act] as const)));
    this.jobById = new Map(given.jobs.map((job) => [job.task.id, job]));
    for (const job of given.jobs) {
      if (job.before === null) continue;
      const after = this.followers.get(job.before.task.id) ?? [];
      after.push(job);
      this.followers.set(job.before.task.id, after);
    }
    this.heat = new HeatSoFar(given.decks, given.settledUntil, given.jobs, this.courses, (job) => this.isLost(job));
    this.bookTold();
    this.run();
  }

  isLost({ task }: Job): boolean {
    return task.tray !== undefined && (this.given.lost.has(task.tray) || this.lostInOven.has(task.tray));
  }

  /** Work told to have begun is known beforehand, so that nothing else is put in its way. */
  private bookTold(): void {
    for (const { jobs, fact } of this.acts) {
      if (fact === undefined) continue;
      for (const job of jobs) {
        const { task } = job;
        const book = (hands: HandsOn, from: number, until: number): void =>
          this.given.diary.book(hands.person, { from, until, taskId: task.id, isTold: true });
        for (const hands of task.handsOn) {
          if (isUnload(hands)) {
            if (fact.end !== undefined) book(hands, fact.end, fact.end + hands.end - hands.start);
          } else if (fact.begin !== undefined) {
            const from = fact.begin + hands.start - job.plannedBegin;
            const until = hands.end === task.end && fact.end !== undefined ? fact.end : from + hands.end - hands.start;
            book(hands, from, until);
          }
        }
      }
    }
  }

  private run(): void {
    const { now } = this.given;
    let waiting = [...this.acts];
    for (let minute = 0; minute <= now; minute++) {
      this.breakDown(minute);
      for (let isChanged = true; isChanged; ) {
        isChanged = minute < now && this.heat.begin(minute);
        for (const course of [...this.baking]) isChanged = this.finish(course, minute) || isChanged;
        for (const act of waiting) {
          if (act.plannedBegin > minute && act.fact?.begin !== minute) continue;
          isChanged = this.begin(act, minute) || isChanged;
        }
        if (isChanged) waiting = waiting.filter(({ jobs }) => !jobs.every((job) => this.courses.has(job.task.id)));
      }
    }
    for (const { jobs, fact } of this.acts) this.checkTold(jobs, fact);
  }

  /** What was on a deck or in a bowl when it went out of use. */
  private breakDown(minute: number): void {
    for (const out of this.given.out.filter(({ from }) => from === minute)) {
      if (out.kind !== 'deck' && out.kind !== 'mixer') continue;
      for (const course of [...this.courses.values()]) {
        const { task } = course.job;
        if (task.place?.id !== out.id || (course.end ?? this.dueOf(course)) <= minute) continue;
        if (task.step === 'bake' && out.kind === 'deck' && minute < this.given.now) this.loseInOven(course, out);
        if (task.step === 'mix' && out.kind === 'mixer') this.mixAgain(course, out);
      }
    }
  }

  loseInOven(course: Course, out: OutOfUse): void {
    course.end = Math.max(course.start, out.from);
    if (course.stay !== null) course.stay.until = course.end;
    this.lostInOven.set(course.job.task.tray ?? '', out);
  }

  mixAgain(course: Course, out: OutOfUse): void {
    const { task } = course.job;
    if (course.stay !== null) course.stay.until = out.from;
    this.given.diary.cut(task.id, out.from);
    this.mixedAgain.set(task.id, out);
    this.courses.delete(task.id);
    const before = course.job.before === null ? undefined : this.courses.get(course.job.before.task.id);
    if (before === undefined || !restsByItself(before.job.step)) return;
    before.end = null;
    if (before.stay !== null) before.stay.until = null;
  }

  /** Whether the tray or batch is there for a job: what it did before is done, or may be. */
  private isReady(job: Job, minute: number): boolean {
    const { before } = job;
    if (before === null) return true;
    const course = this.courses.get(before.task.id);
    if (course === undefined) return false;
    if (restsByItself(before.step)) return minute >= course.start + before.minutes.min;
    return course.end !== null && course.end + before.unload <= minute;
  }

  private begin(act: Act, minute: number): boolean {
    const isTold = act.fact?.begin !== undefined;
    if (isTold && act.fact?.begin !== minute) return false;
    if (minute === this.given.now && !isTold) return false;
    if (act.fact?.isNotYet === true) return false;
    const jobs = act.jobs.filter(
      (job) => !this.courses.has(job.task.id) && !this.mixedAgain.has(job.task.id) && !this.isLost(job),
    );
    if (jobs.length === 0) return false;
    if (isTold) return this.beginAsTold(act, jobs, minute);
    if (!jobs.every((job) => this.isReady(job, minute) && this.mayBegin(job, minute))) return false;
    const positions = this.positionsFor(jobs, minute);
    if (positions === null) return false;
    jobs.forEach((job, index) => {
      this.put(job, minute, positions[index] ?? 1);
    });
    return true;
  }

  private beginAsTold({ fact }: Act, jobs: readonly Job[], minute: number): boolean {
    if (fact === undefined || this.contradictions.some((one) => one.fact === fact)) return false;
    const against = fact.isKnown
      ? undefined
      : jobs.map((job) => this.against(job, fact, minute)).find((one) => one !== undefined);
    const positions = this.positionsFor(jobs, minute) ?? (fact.isKnown ? [] : null);
    if (against !== undefined || positions === null) {
      const [job] = jobs;
      if (against !== undefined) this.contradictions.push(against);
      else if (job !== undefined)
        this.contradictions.push(alreadyFull(job, this.whoFills(job, minute), fact, minute, this.given.says));
      return false;
    }
    jobs.forEach((job, index) => {
      this.put(job, minute, positions[index] ?? job.task.place?.position ?? 1);
    });
    return true;
  }

  private whoFills({ task, load }: Job, minute: number): readonly string[] {
    const stays = task.place === undefined ? [] : this.given.rooms.staysIn(task.place);
    return stays.filter(({ until }) => until === null || until > minute + load).map(({ taskId }) => taskId);
  }

  /** What speaks against a job having begun at a minute. */
  private against(job: Job, fact: Fact, minute: number): Contradiction | undefined {
    const { diary, says } = this.given;
    const before = job.before === null ? undefined : this.courses.get(job.before.task.id);
    if (job.before !== null && (before === undefined || before.start >= minute))
      return notBegunBefore(job, job.before, fact, minute, says);
    for (const hands of job.task.handsOn.filter((one) => !isUnload(one))) {
      const from = minute + hands.start - job.plannedBegin;
      const other = diary.inTheWay(hands.person, from, from + 1, job.task.id);
      if (other !== undefined) return alreadyBusy(job, hands.person, other, fact, minute, says);
    }
    return undefined;
  }

  /** Whether hands, place and heat are there for a job to begin. */
  private mayBegin(job: Job, minute: number): boolean {
    const { diary, rooms } = this.given;
    const { task } = job;
    if (!this.heat.mayBegin(job, minute)) return false;
    if (task.place !== undefined && !rooms.isInUse(task.place, minute + job.load)) return false;
    return task.handsOn
      .filter((hands) => !isUnload(hands))
      .every((hands) => {
        const from = minute + hands.start - job.plannedBegin;
        const until = from + hands.end - hands.start;
        if (!diary.isThere(hands.person, from, until)) return false;
        const other = diary.inTheWay(hands.person, from, until, task.id);
        return other === undefined || (this.mayBeCutFor(job, other.taskId, other.isTold) && other.from > from);
      });
  }

  /** Work a person was at is done a little sooner when what they were to do after it is told to have begun before its end. */
  private mayBeCutFor(job: Job, taskId: string, isTold: boolean): boolean {
    const other = this.jobById.get(taskId);
    return isTold && job.step.do !== 'bake' && other !== undefined && other.plannedBegin >= job.plannedBegin;
  }

  /** A position for each job, the planned one where it is free; null when there is not room for all. */
  private positionsFor(jobs: readonly Job[], minute: number): readonly number[] | null {
    const taken = new Set<number>();
    const positions: number[] = [];
    for (const job of jobs) {
      const { place } = job.task;
      if (place === undefined) {
        positions.push(1);
        continue;
      }
      const at = minute + job.load;
      if (place.kind === 'deck') for (const stay of this.given.rooms.staysIn(place)) this.comeOutBy(stay, at);
      const free = this.given.rooms.freePositions(place, at).filter((position) => !taken.has(position));
      const position = free.includes(place.position) ? place.position : free[0];
      if (position === undefined) return null;
      taken.add(position);
      positions.push(position);
    }
    return positions;
  }

  /** A tray that is to come off its deck while the next is being loaded is off it in time, when somebody has hands for it. */
  private comeOutBy(stay: Stay, minute: number): void {
    const course = this.courses.get(stay.taskId);
    if (course === undefined || course.end !== null) return;
    const due = this.dueOf(course);
    if (due <= minute) this.takeOut(course, due);
  }

  private toldEnd(job: Job): number | undefined {
    return this.given.facts.get(job.task.id)?.end ?? this.actOf.get(job.task.id)?.fact?.end;
  }

  private dueOf({ job, start }: Course): number {
    return this.toldEnd(job) ?? start + job.task.end - job.task.start;
  }

  /** Ends a bake when hands are there to take it out. */
  private takeOut(course: Course, minute: number): boolean {
    const { job } = course;
    const isTold = this.toldEnd(job) !== undefined;
    const hands = job.task.handsOn.filter(isUnload).map((one) => ({ ...one, start: minute, end: minute + one.end - one.start }));
    const isFree = hands.every(
      ({ person, start, end }) =>
        this.given.diary.isThere(person, start, end) && this.given.diary.inTheWay(person, start, end, job.task.id) === undefined,
    );
    if (!isTold && !isFree) return false;
    course.end = minute;
    course.unloading = hands;
    course.isToldOut = isTold;
    if (course.stay !== null) course.stay.until = minute;
    if (!isTold)
      for (const { person, start, end } of hands)
        this.given.diary.book(person, { from: start, until: end, taskId: job.task.id, isTold });
    return true;
  }

  /** Bakes that are due come out, those of a load together. */
  private finish(course: Course, minute: number): boolean {
    const { job } = course;
    if (course.end !== null || this.isLost(job)) {
      this.baking.delete(course);
      return false;
    }
    const toldEnd = this.toldEnd(job);
    if (toldEnd === undefined && minute === this.given.now) return false;
    if (this.dueOf(course) > minute) return false;
    const load = this.actOf.get(job.task.id)?.jobs ?? [job];
    const carrier = load.find((one) => one.task.handsOn.some(isUnload)) ?? job;
    const carried = this.courses.get(carrier.task.id);
    if (carried === undefined || carried.end !== null || carrier === job)
      return this.takeOut(course, carried?.end ?? toldEnd ?? minute);
    return this.takeOut(carried, toldEnd ?? minute);
  }

  private put(job: Job, minute: number, position: number): void {
    const { task, step, before } = job;
    const { diary, rooms } = this.given;
    const start = minute + job.load;
    const fact = this.given.facts.get(task.id);
    this.leave(before, minute);
    const natural = start + task.end - task.start;
    let end: number | null = null;
    if (step.do !== 'bake' && !restsByItself(step))
      end = fact?.end ?? Math.min(natural, this.nextTold(job, start), this.cutAt(job, start, natural));
    else if (step.do !== 'bake' && job.isLast) end = fact?.end ?? start + Math.max(job.minutes.min, task.end - task.start);
    const stay = rooms.put(task, position, start, end);
    const course: Course = { job, begin: minute, start, end, stay, unloading: [], isToldOut: false };
    this.courses.set(task.id, course);
    if (step.do === 'bake') this.baking.add(course);
    if (fact?.begin !== undefined) {
      if (end !== null) diary.cut(task.id, end);
      return;
    }
    for (const hands of task.handsOn.filter((one) => !isUnload(one))) {
      const from = minute + hands.start - job.plannedBegin;
      const until = Math.min(from + hands.end - hands.start, end ?? Number.POSITIVE_INFINITY);
      diary.book(hands.person, { from, until, taskId: task.id, isTold: false });
    }
  }

  /** When a step of the same tray that follows is told to have begun: by then this one was over. */
  private nextTold(job: Job, start: number): number {
    const told = (this.followers.get(job.task.id) ?? []).flatMap((next) => this.given.facts.get(next.task.id)?.begin ?? []);
    return Math.min(Number.POSITIVE_INFINITY, ...told.filter((begin) => begin > start));
  }

  private cutAt(job: Job, start: number, end: number): number {
    const others = job.task.handsOn.flatMap(({ person }) => this.given.diary.inTheWay(person, start, end, job.task.id) ?? []);
    const later = others.filter((other) => other.from > start && this.mayBeCutFor(job, other.taskId, other.isTold));
    return Math.min(Number.POSITIVE_INFINITY, ...later.map(({ from }) => from));
  }

  /** What a tray or batch leaves when its next step begins: it was at rest, or still in the oven by what was thought. */
  private leave(before: Job | null, minute: number): void {
    const course = before === null ? undefined : this.courses.get(before.task.id);
    if (before === null || course === undefined) return;
    if (course.end === null && before.step.do === 'bake') {
      course.end = Math.max(course.start, minute - before.unload);
      course.unloading = before.task.handsOn
        .filter(isUnload)
        .map((one) => ({ ...one, start: course.end ?? minute, end: (course.end ?? minute) + one.end - one.start }));
    } else if (course.end === null) {
      const longest = before.minutes.max + (before.known?.overrunMinutes ?? 0);
      course.end = Math.min(minute, course.start + longest);
    }
    if (course.stay !== null && (course.stay.until === null || restsByItself(before.step))) course.stay.until = minute;
  }

  /** Everything told that did not come to pass on the way. */
  private checkTold(jobs: readonly Job[], fact: Fact | undefined): void {
    if (fact === undefined || this.contradictions.some((one) => one.fact === fact)) return;
    for (const job of jobs) {
      const told = this.given.facts.get(job.task.id);
      const course = this.courses.get(job.task.id);
      if (told?.end === undefined || this.isLost(job)) continue;
      if (course !== undefined && course.start <= told.end) continue;
      this.contradictions.push(cannotHaveEnded(job, course?.start, told, this.given.says));
    }
  }
}
