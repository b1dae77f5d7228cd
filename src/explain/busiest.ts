// The busiest place or person by the clock: for each the spans in which it is full and how much of its time it is in use. Used by
// why, and by questions that compare days.
import { type JudgedDay, judgedDayOf } from '../check/judgedDay.ts';
import { sayMinute } from '../check/sayMinute.ts';
import { serviceOf } from '../check/service.ts';
import type { Scenario } from '../model/scenario.ts';
import type { Busiest, ResourceUse } from '../model/why.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import { heldPerMinute, type Resource, resourcesOf } from './why/resources.ts';
import { capital, inWords, listed, resourceWords } from './why/words.ts';

/** Share of the plan a place must be in use for, first to last, to count as the busiest: a bowl used once is always "full". */
const LEAST_SPAN_SHARE = 1 / 3;

/** Spans named one by one in a sentence. */
const MOST_SPANS = 4;

type Span = ResourceUse['full'][number];

function spansWhere(length: number, holds: (minute: number) => boolean): Span[] {
  const spans: Span[] = [];
  let start = -1;
  for (let minute = 0; minute <= length; minute++) {
    const isIn = minute < length && holds(minute);
    if (isIn && start < 0) start = minute;
    if (isIn || start < 0) continue;
    spans.push({ start, end: minute });
    start = -1;
  }
  return spans;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function saySpans(day: JudgedDay, full: readonly Span[]): string {
  const longest = [...full].sort((a, b) => b.end - b.start - (a.end - a.start) || a.start - b.start).slice(0, MOST_SPANS);
  const shown = longest.sort((a, b) => a.start - b.start);
  const more = full.length - shown.length;
  const times = shown.map(({ start, end }) => `${sayMinute(day.clock, start)} to ${sayMinute(day.clock, end)}`);
  return listed(more > 0 ? [...times, `${inWords(more)} shorter ${more === 1 ? 'time' : 'times'}`] : times);
}

function sayUse(day: JudgedDay, use: Omit<ResourceUse, 'says'>): string {
  const { kind, room, firstUse, lastUse, full, fullMinutes, share } = use;
  const what = capital(resourceWords(kind, use.name));
  const areMany = kind === 'shelf';
  if (firstUse === null || lastUse === null) return `${what} ${areMany ? 'are' : 'is'} not used.`;
  const between = `between ${sayMinute(day.clock, firstUse)} and ${sayMinute(day.clock, lastUse)}`;
  if (kind === 'person') return `${what} is at work ${percent(share)} of the time ${between}, breaks not counted.`;
  const inUse = `in use ${percent(share)} of the time ${between}`;
  if (room === 1) return `${what} ${areMany ? 'are' : 'is'} ${inUse}.`;
  if (full.length === 0) return `${what} ${areMany ? 'are' : 'is'} never full; ${inUse}.`;
  const ofAll = `${inWords(room)} of ${inWords(room)}`;
  return `${what} ${areMany ? 'are' : 'is'} full ${saySpans(day, full)} (${ofAll}, ${fullMinutes} min in all); ${inUse}.`;
}

function useOf(day: JudgedDay, resource: Resource): ResourceUse {
  const { kind, id, name, room, open, holders } = resource;
  const held = heldPerMinute(resource);
  const used = holders.filter(({ from, until }) => until > from);
  const firstUse = used.length === 0 ? null : used.reduce((first, { from }) => Math.min(first, from), Number.POSITIVE_INFINITY);
  const lastUse = used.length === 0 ? null : used.reduce((last, { until }) => Math.max(last, until), 0);
  let usedMinutes = 0;
  let openMinutes = 0;
  for (let minute = firstUse ?? 0; minute < (lastUse ?? 0); minute++) {
    usedMinutes += held[minute] ?? 0;
    openMinutes += (open[minute] ?? 0) * room;
  }
  const full = room === 0 ? [] : spansWhere(open.length, (minute) => (held[minute] ?? 0) >= room);
  const bare = {
    kind,
    id,
    name,
    room,
    firstUse,
    lastUse,
    usedMinutes,
    openMinutes,
    share: openMinutes === 0 ? 0 : usedMinutes / openMinutes,
    full,
    fullMinutes: full.reduce((sum, { start, end }) => sum + end - start, 0),
  };
  return { ...bare, says: sayUse(day, bare) };
}

/** Minutes from the first task of the plan to the last tray ready. */
function planMinutes(day: JudgedDay): number {
  const first = day.tasks.reduce((least, { task }) => Math.min(least, task.start), Number.POSITIVE_INFINITY);
  const last = serviceOf(day).trays.reduce((most, tray) => Math.max(most, tray.readyMinute), 0);
  return Math.max(0, last - first);
}

const spanOf = ({ firstUse, lastUse }: ResourceUse): number => (lastUse ?? 0) - (firstUse ?? 0);

/** The same of a plan already laid beside its scenario. */
export function busiestOfDay(day: JudgedDay): Busiest {
  const uses = resourcesOf(day).map((resource) => useOf(day, resource));
  const resources = [...uses].sort((a, b) => b.share - a.share || b.fullMinutes - a.fullMinutes);
  const least = LEAST_SPAN_SHARE * planMinutes(day);
  const top = resources.find((use) => use.firstUse !== null && spanOf(use) >= least);
  if (top === undefined)
    return { resources, busiest: null, says: 'No place and nobody is short: nothing the plan uses is limited.' };
  return { resources, busiest: { kind: top.kind, id: top.id }, says: `Busiest by the clock: ${top.says}` };
}

/** How every limited place and every person is used by a plan, and which is busiest. The plan has passed the judge. */
export function busiestOf(scenario: Scenario, plan: WrittenPlan): Busiest {
  return busiestOfDay(judgedDayOf(scenario, plan));
}
