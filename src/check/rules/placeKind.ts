// PLACE_KIND: kind of the place = the kind the step needs. A step that needs none, has none; where the scenario sets a kind
// no limit, its place may be left away.
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { placeKindOf, roomOf } from '../places.ts';
import { sayMinute } from '../sayMinute.ts';

export function placeKind(day: JudgedDay): readonly Finding[] {
  return allRuns(day).flatMap(({ step, named: { id, task } }) => {
    const needed = placeKindOf(step);
    const stated = task.place?.kind;
    const mayBeAbsent = needed === undefined || roomOf(day.scenario, needed) === undefined;
    if (stated === needed || (stated === undefined && mayBeAbsent)) return [];
    const needs = needed === undefined ? 'no place' : `a ${needed}`;
    const has = stated === undefined ? 'has no place' : `is on a ${stated}`;
    return [
      { says: `${id} at ${sayMinute(day.clock, task.start)} needs ${needs} and ${has}.`, taskIds: [id], minute: task.start },
    ];
  });
}
