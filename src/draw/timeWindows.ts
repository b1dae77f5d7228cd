// Cuts the day into chart pages: stretches with work, none longer than a page can show at a readable scale.
import type { Plan } from '../model/plan.ts';
import type { DayClock } from './dayClock.ts';
import type { TimeWindow } from './sheet.ts';

/** The most minutes on one page: 0.4 mm a minute and more. */
const PAGE_MINUTES = 390;
/** A stretch of so many minutes in which nothing begins or ends gets no page. */
const QUIET_MINUTES = 150;
const SHORTEST_MINUTES = 120;
/** So much of what is past shows on a day planned anew. */
export const PAST_MINUTES = 30;

function momentsOf(plan: Plan): readonly number[] {
  const tasks = plan.tasks.flatMap((task) => [
    task.start,
    task.end,
    ...task.handsOn.flatMap((hands) => [hands.start, hands.end]),
  ]);
  const heat = plan.decks.flatMap((deck) => deck.setPoints.flatMap((move) => [move.start, move.end]));
  const from = plan.underway === undefined ? 0 : Math.max(0, plan.underway.now - PAST_MINUTES);
  const moments = [...tasks, ...heat].filter((minute) => minute >= from && minute <= plan.day.minutes);
  return (plan.underway === undefined ? moments : [...moments, from]).sort((a, b) => a - b);
}

function stretches(moments: readonly number[]): readonly TimeWindow[] {
  const found: { from: number; until: number }[] = [];
  for (const minute of moments) {
    const last = found.at(-1);
    if (last !== undefined && minute - last.until <= QUIET_MINUTES) last.until = minute;
    else found.push({ from: minute, until: minute });
  }
  return found;
}

/** Widens a stretch to half hours of the wall clock, some minutes clear of its first and last moment. */
function widened(stretch: TimeWindow, clock: DayClock): TimeWindow {
  const early = stretch.from - 4;
  const from = early - (((clock.localMinute(early) % 30) + 30) % 30);
  const late = Math.max(stretch.until + 6, from + SHORTEST_MINUTES);
  const until = late + ((30 - (((clock.localMinute(late) % 30) + 30) % 30)) % 30);
  return { from, until };
}

function cut(window: TimeWindow): readonly TimeWindow[] {
  const minutes = window.until - window.from;
  const pages = Math.ceil(minutes / PAGE_MINUTES);
  const length = Math.ceil(minutes / pages / 30) * 30;
  return Array.from({ length: pages }, (_, page) => ({
    from: window.from + page * length,
    until: page === pages - 1 ? window.until : window.from + (page + 1) * length,
  }));
}

/**
 * Windows of the chart pages, in order. A day without any moment shows its first two hours. Orders wanted long after the
 * last tray is ready make no page longer; they stand at its edge.
 */
export function timeWindows(plan: Plan, clock: DayClock): readonly TimeWindow[] {
  const moments = momentsOf(plan);
  const all = stretches(moments.length === 0 ? [0] : moments);
  const windows: TimeWindow[] = [];
  for (const stretch of all) {
    const wide = widened(stretch, clock);
    const last = windows.at(-1);
    // Two stretches whose margins touch are one.
    if (last !== undefined && wide.from <= last.until) windows[windows.length - 1] = { from: last.from, until: wide.until };
    else windows.push(wide);
  }
  return windows.flatMap(cut);
}
