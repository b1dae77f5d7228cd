// PLACE_POSITION: 1 <= position <= room of the place; of two holdings of one position, start of the later >= end of the earlier.
// While a place is over its room, the capacity rule says so and this one is quiet about it.
import { PLACE_KINDS } from '../../model/plan.ts';
import { type Crowd, crowds } from '../crowding.ts';
import { cutAtNow } from '../cutAtNow.ts';
import type { Finding } from '../finding.ts';
import { type Holding, holdings } from '../holdings.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { roomOf } from '../places.ts';
import { sayMinute } from '../sayMinute.ts';

function isCrowded(crowded: readonly Crowd[], placeId: string, from: number, until: number): boolean {
  return crowded.some((crowd) => crowd.placeId === placeId && crowd.from < until && crowd.until > from);
}

function outsideFindings(day: JudgedDay, held: readonly Holding[], room: number, crowded: readonly Crowd[]): readonly Finding[] {
  return held
    .filter(({ position }) => position < 1 || position > room)
    .flatMap(({ holder, placeId, position, named, ...stay }) =>
      cutAtNow(day, stay.from, stay.until)
        .filter(({ from, until }) => !isCrowded(crowded, placeId, from, until))
        .map(({ from, until }) => ({
          says: `At ${sayMinute(day.clock, from)} ${holder} is in position ${position} of ${placeId}, which has ${room}.`,
          taskIds: [named.id],
          minute: from,
          until,
        })),
    );
}

/** Two in one position. `held` is of one position. */
function sharedFindings(day: JudgedDay, held: readonly Holding[], crowded: readonly Crowd[]): readonly Finding[] {
  const findings: Finding[] = [];
  let earlier: Holding | undefined;
  for (const later of [...held].sort((a, b) => a.from - b.from || a.until - b.until)) {
    if (later.until <= later.from) continue;
    if (earlier !== undefined && later.from < earlier.until) {
      const taskIds = [earlier.named.id, later.named.id];
      const both = `${earlier.holder} and ${later.holder} are both in position ${later.position} of ${later.placeId}.`;
      for (const { from, until } of cutAtNow(day, later.from, Math.min(earlier.until, later.until))) {
        if (isCrowded(crowded, later.placeId, from, until)) continue;
        const when = `Between ${sayMinute(day.clock, from)} and ${sayMinute(day.clock, until)}`;
        findings.push({ says: `${when} ${both}`, taskIds, minute: from, until });
      }
    }
    if (earlier === undefined || later.until > earlier.until) earlier = later;
  }
  return findings;
}

function byPosition(held: readonly Holding[]): readonly (readonly Holding[])[] {
  const positions = new Map<number, Holding[]>();
  for (const holding of held) {
    const own = positions.get(holding.position);
    if (own === undefined) positions.set(holding.position, [holding]);
    else own.push(holding);
  }
  return [...positions.values()];
}

export function placePosition(day: JudgedDay): readonly Finding[] {
  const all = holdings(day);
  return PLACE_KINDS.flatMap((kind) => {
    const crowded = crowds(day, kind);
    return [...(roomOf(day.scenario, kind) ?? [])].flatMap(([placeId, room]) => {
      const held = all.filter((holding) => holding.kind === kind && holding.placeId === placeId);
      return [
        ...outsideFindings(day, held, room, crowded),
        ...byPosition(held).flatMap((own) => sharedFindings(day, own, crowded)),
      ];
    });
  });
}
