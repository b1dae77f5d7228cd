// PLACE_KIND: kind of the place = the kind the step needs, and a place of that name is of that kind. A step that needs none,
// has none; where the scenario sets a kind no limit, its place may be left away.
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { placeIds, placeKindOf, roomOf } from '../places.ts';
import { sayMinute } from '../sayMinute.ts';

export function placeKind(day: JudgedDay): readonly Finding[] {
  const places = placeIds(day.scenario);
  return allRuns(day).flatMap(({ step, named: { id, task } }) => {
    const needed = placeKindOf(step);
    const { place } = task;
    const room = needed === undefined ? undefined : roomOf(day.scenario, needed);
    const mayBeAbsent = needed === undefined || room === undefined;
    const isAnotherKind = place !== undefined && room !== undefined && !room.has(place.id) && places.has(place.id);
    if (place === undefined ? mayBeAbsent : place.kind === needed && !isAnotherKind) return [];
    const needs = needed === undefined ? 'no place' : `a ${needed}`;
    const has =
      place === undefined ? 'has no place' : `has the ${place.kind} ${place.id}${isAnotherKind ? `, not a ${needed}` : ''}`;
    const says = `${id} at ${sayMinute(day.clock, task.start)} needs ${needs} and ${has}.`;
    return [{ says, taskIds: [id], minute: task.start, until: task.end }];
  });
}
