// AS_BEGUN: of each step that has ended or begun: start = its start, place = its place, work begun before now = that work; if it
// has ended, end = its end, else done >= now for what is worked, mixed or baked. Temperature of each deck = what it was, at every
// minute up to now. A tray may be missing as a whole.
import type { HandsOn } from '../../model/plan.ts';
import type { StepKind } from '../../model/steps.ts';
import type { Underway, UnderwayTask } from '../../model/underway.ts';
import { C_TOLERANCE } from '../bakesOnDecks.ts';
import { temperatures } from '../deckDays.ts';
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay, StepRun } from '../judgedDay.ts';
import { isOfTogetherOven } from '../loadedTogether.ts';
import { roomOf } from '../places.ts';
import { sayC, sayMinute } from '../sayMinute.ts';

/** Steps that go on by themselves: when they are over is told by the step that follows, which may be a while. */
const BY_ITSELF: readonly StepKind[] = ['bulk', 'rest', 'retard', 'proof', 'cool'];

function placeSays(day: JudgedDay, { named: { id, task } }: StepRun, record: UnderwayTask): readonly string[] {
  const was = record.place;
  if (was === undefined || roomOf(day.scenario, was.kind) === undefined) return [];
  const is = task.place;
  if (is?.kind === was.kind && is.id === was.id && is.position === was.position) return [];
  const say = ({ id: place, position }: typeof was) => `${place}, position ${position}`;
  return [`${id} is in ${say(was)}; the plan has it in ${is === undefined ? 'no place' : say(is)}.`];
}

/** Work begun before now that stands on one side only. When work still under way ends is not settled yet. */
function workSays(day: JudgedDay, { named: { id, task } }: StepRun, record: UnderwayTask, now: number): readonly string[] {
  const say = (work: HandsOn) => {
    const end = work.end <= now ? ` to ${sayMinute(day.clock, work.end)}` : '';
    return `${work.person} for ${work.for} from ${sayMinute(day.clock, work.start)}${end}`;
  };
  const begun = (handsOn: readonly HandsOn[]) => new Set(handsOn.filter(({ start }) => start < now).map(say));
  const [was, is] = [begun(record.handsOn), begun(task.handsOn)];
  return [
    ...[...was].filter((work) => !is.has(work)).map((work) => `At ${id} was ${work}; the plan does not have it.`),
    ...[...is].filter((work) => !was.has(work)).map((work) => `The plan has at ${id} ${work}; it was not so.`),
  ];
}

/** A load may take longer to unload than the trays of it that are still in the plan. */
function isBeingUnloaded(day: JudgedDay, run: StepRun, record: UnderwayTask): boolean {
  return isOfTogetherOven(day, run) && run.named.task.end === record.end;
}

function runFindings(day: JudgedDay, run: StepRun, now: number): readonly Finding[] {
  const { record } = run;
  if (record === undefined || record.state === 'planned') return [];
  const { id, task } = run.named;
  const at = (minute: number) => sayMinute(day.clock, minute);
  const says: string[] = [];
  if (task.start !== record.start) says.push(`${id} began at ${at(record.start)}; the plan begins it at ${at(task.start)}.`);
  if (record.state === 'ended') {
    if (task.end !== record.end) says.push(`${id} ended at ${at(record.end)}; the plan ends it at ${at(task.end)}.`);
  } else if (run.done < now && !BY_ITSELF.includes(run.step.do) && !isBeingUnloaded(day, run, record)) {
    says.push(`${id} is not done at ${at(now)}; in the plan it is done at ${at(run.done)}.`);
  }
  says.push(...placeSays(day, run, record), ...workSays(day, run, record, now));
  return says.map((text) => ({ says: text, taskIds: [id], minute: record.start }));
}

/** The first minute up to now at which a deck was at another temperature than the plan says. */
function deckFindings(day: JudgedDay, underway: Underway): readonly Finding[] {
  const movesOf = new Map(underway.decks.map(({ id, setPoints }) => [id, setPoints]));
  return [...day.decks.values()].flatMap(({ id, deck, temperatureC }) => {
    const was = temperatures(deck.startsAtC, movesOf.get(id) ?? [], Math.min(underway.now, day.clock.minutes));
    const minute = was.findIndex((celsius, each) => Math.abs(celsius - (temperatureC[each] ?? celsius)) > C_TOLERANCE);
    if (minute === -1) return [];
    const at = `At ${sayMinute(day.clock, minute)} deck ${id} was at ${sayC(was[minute] ?? 0)}`;
    return [{ says: `${at}; the plan has it at ${sayC(temperatureC[minute] ?? 0)}.`, taskIds: [], minute }];
  });
}

export function asBegun(day: JudgedDay): readonly Finding[] {
  const { underway } = day.scenario;
  if (underway === undefined) return [];
  return [...allRuns(day).flatMap((run) => runFindings(day, run, underway.now)), ...deckFindings(day, underway)];
}
