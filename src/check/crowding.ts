// Counts, minute by minute, how many hold a place, and finds where that is more than its room.
import type { PlaceKind } from '../model/plan.ts';
import { cutAtNow } from './cutAtNow.ts';
import type { Finding } from './finding.ts';
import { type Holding, holdings } from './holdings.ts';
import type { JudgedDay } from './judgedDay.ts';
import { roomOf } from './places.ts';
import { sayMinute } from './sayMinute.ts';

/** A stretch of minutes with more than fits; `until` is excluded, `most` the largest number at once in it. None spans now. */
export type Crowd = {
  readonly kind: PlaceKind;
  readonly placeId: string;
  readonly room: number;
  readonly from: number;
  readonly until: number;
  readonly most: number;
  readonly holders: readonly Holding[];
};

function countPerMinute(held: readonly Holding[], dayMinutes: number): readonly number[] {
  const count = new Array<number>(dayMinutes).fill(0);
  for (const { from, until } of held) {
    for (let minute = Math.max(0, from); minute < Math.min(dayMinutes, until); minute++) {
      count[minute] = (count[minute] ?? 0) + 1;
    }
  }
  return count;
}

function crowdsOf(day: JudgedDay, kind: PlaceKind, placeId: string, room: number, held: readonly Holding[]): readonly Crowd[] {
  const dayMinutes = day.clock.minutes;
  const count = countPerMinute(held, dayMinutes);
  const crowds: Crowd[] = [];
  let from = 0;
  while (from < dayMinutes) {
    let until = from;
    while (until < dayMinutes && (count[until] ?? 0) > room) until++;
    const parts = until > from ? cutAtNow(day, from, until) : [];
    for (const part of parts) {
      const most = count.slice(part.from, part.until).reduce((high, each) => Math.max(high, each), 0);
      const holders = held.filter((holding) => holding.from < part.until && holding.until > part.from);
      crowds.push({ kind, placeId, room, ...part, most, holders });
    }
    from = until + 1;
  }
  return crowds;
}

/** Every stretch of the day in which a place of this kind holds more than it has room for. */
export function crowds(day: JudgedDay, kind: PlaceKind): readonly Crowd[] {
  const held = holdings(day).filter((holding) => holding.kind === kind);
  return [...(roomOf(day.scenario, kind) ?? [])].flatMap(([placeId, room]) =>
    crowdsOf(
      day,
      kind,
      placeId,
      room,
      held.filter((holding) => holding.placeId === placeId),
    ),
  );
}

/** The breaches of a capacity rule: one for each crowded stretch. `things` names what is counted, as "trays". */
export function crowdFindings(day: JudgedDay, kind: PlaceKind, things: string): readonly Finding[] {
  return crowds(day, kind).map(({ placeId, room, from, until, most, holders }) => ({
    says:
      `${placeId} holds ${most} ${things} at once between ${sayMinute(day.clock, from)} and ${sayMinute(day.clock, until)}, ` +
      `${most - room} more than its room of ${room}: ${holders.map(({ holder }) => holder).join(', ')}.`,
    taskIds: holders.map(({ named }) => named.id),
    minute: from,
    until,
  }));
}
