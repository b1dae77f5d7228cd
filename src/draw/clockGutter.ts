// The clock down the left edge of a chart page, with its lines across the page, midnight, and the nights the clocks change.
import type { ClockChange, DayClock } from './dayClock.ts';
import { type Label, labelSize, placeLabel } from './label.ts';
import type { Area, TimeWindow } from './sheet.ts';
import { el, type SvgNode } from './svg.ts';
import { INK, LINE, PAPER, TYPE } from './typeSize.ts';

export const GUTTER_WIDTH = 17;

const STEP_MINUTES = 15;
/** Least height of half an hour at which the half hours are written too. */
const HALF_HOUR_MM = 7.5;
/** Room below a flagged minute that its flag takes. */
const FLAG_MM = 12;

function isTick(clock: DayClock, minute: number): boolean {
  return clock.localMinute(minute) % STEP_MINUTES === 0;
}

/** Weight, dashes and type of the lines at the full hour, the half hour and the quarters. */
function styleOf(past: number) {
  if (past === 0) return { weight: 0.35, dashes: undefined, type: TYPE.far };
  return past === 30 ? { weight: 0.2, dashes: '2 1', type: 3.2 } : { weight: 0.12, dashes: '0.5 1.2', type: 3.2 };
}

/** Where the page is short of height the full hours are enough; and a half hour gives way to a flag. */
function isWritten(past: number, area: Area, minute: number, flags: readonly number[]): boolean {
  if (past === 0) return true;
  if (past !== 30) return false;
  const isUnderFlag = flags.some((at) => at < minute && area.y(minute) - area.y(at) < FLAG_MM);
  return !isUnderFlag && (minute === area.window.from || area.y(minute) - area.y(minute - 30) >= HALF_HOUR_MM);
}

type Stretch = { readonly top: number; readonly bottom: number };

/** Where on the page a flag of so many lines stands: below its line, above it at the foot of the page. */
function flagAt(area: Area, minute: number, lines: number): Stretch {
  const height = lines * TYPE.smallest * LINE;
  const y = area.y(minute);
  const top = y + 3 + height > area.box.y + area.box.height ? y - 3 - height : y + 3;
  return { top, bottom: top + height + 0.6 };
}

function tick(
  clock: DayClock,
  area: Area,
  minute: number,
  right: number,
  flags: readonly number[],
  now: Stretch | undefined,
): readonly SvgNode[] {
  const past = ((clock.localMinute(minute) % 60) + 60) % 60;
  const { weight, dashes, type } = styleOf(past);
  const y = area.y(minute);
  const x1 = area.box.x + GUTTER_WIDTH - 2;
  const line = el('line', { x1, y1: y, x2: right, y2: y, stroke: INK, 'stroke-width': weight, 'stroke-dasharray': dashes });
  if (!isWritten(past, area, minute, flags)) return [line];
  const label: Label = [{ text: clock.shows(minute), size: type, bold: past === 0 }];
  const { height } = labelSize(label);
  const top = Math.min(area.box.y + area.box.height - height, y - height / 2);
  // Any other clock time gives way to now.
  if (now !== undefined && top < now.bottom && top + height > now.top) return [line];
  return [line, ...placeLabel(label, x1 - 0.6, top, 'end')];
}

function flag(area: Area, minute: number, lines: readonly string[], right: number): readonly SvgNode[] {
  const label: Label = lines.map((text) => ({ text, size: TYPE.smallest, bold: true }));
  const { height } = labelSize(label);
  const y = area.y(minute);
  const { top } = flagAt(area, minute, lines.length);
  return [
    el('line', { x1: area.box.x + GUTTER_WIDTH - 2, y1: y, x2: right, y2: y, stroke: INK, 'stroke-width': 0.9 }),
    el('rect', { x: area.box.x, y: top, width: GUTTER_WIDTH - 2, height: height + 0.6, fill: INK }),
    ...placeLabel(label, area.box.x + (GUTTER_WIDTH - 2) / 2, top + 0.3, 'middle', PAPER),
  ];
}

/** "The clocks go forward: 01:00 becomes 02:00." */
export function changeInWords(clock: DayClock, change: ClockChange): string {
  const before = (clock.localMinute(change.minute) - change.movesBy + 2880) % 1440;
  const was = `${String(Math.floor(before / 60)).padStart(2, '0')}:${String(before % 60).padStart(2, '0')}`;
  return `The clocks go ${change.movesBy > 0 ? 'forward' : 'back'}: ${was} becomes ${clock.shows(change.minute)}.`;
}

/** Minutes inside the window that get a flag, with its words: new days, clock changes, and now. */
function flagsIn(clock: DayClock, { from, until }: TimeWindow, now: number | undefined): ReadonlyMap<number, readonly string[]> {
  const flags = new Map<number, readonly string[]>();
  for (let minute = from + 1; minute < until; minute += 1) {
    if (clock.dayOffset(minute) === clock.dayOffset(minute - 1)) continue;
    const [weekday = '', day = '', month = ''] = clock.dateWords(minute).split(' ');
    flags.set(minute, [weekday.slice(0, 3), `${day} ${month.slice(0, 3)}`]);
  }
  for (const { minute, movesBy } of clock.changes) {
    if (minute <= from || minute >= until) continue;
    flags.set(minute, [...(flags.get(minute) ?? []), 'clocks go', movesBy > 0 ? 'forward' : 'back']);
  }
  if (now !== undefined && now >= from && now < until) flags.set(now, [...(flags.get(now) ?? []), 'now', clock.shows(now)]);
  return flags;
}

/** The gutter and the lines; `right` is where the lines end, `now` the minute from which a day was planned anew. */
export function clockGutter(clock: DayClock, area: Area, right: number, now?: number): readonly SvgNode[] {
  const { from, until } = area.window;
  const flags = flagsIn(clock, area.window, now);
  const nowLines = now === undefined ? undefined : flags.get(now);
  const nowFlag = now === undefined || nowLines === undefined ? undefined : flagAt(area, now, nowLines.length);
  const minutes = Array.from({ length: until - from + 1 }, (_, k) => from + k).filter((minute) => isTick(clock, minute));
  return [
    ...minutes.flatMap((minute) => tick(clock, area, minute, right, [...flags.keys()], nowFlag)),
    ...[...flags].flatMap(([minute, lines]) => flag(area, minute, lines, right)),
  ];
}
