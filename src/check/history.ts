// What has happened is no breach: in a day under way, a finding about nothing but what has ended or begun is dropped once it
// is over by now. What reaches past now can still be helped, or must be known, and stays a breach, dated now.
import type { RuleCode } from '../model/rules.ts';
import type { UnderwayTask } from '../model/underway.ts';
import type { Finding } from './finding.ts';
import { allRuns } from './hands.ts';
import type { JudgedDay } from './judgedDay.ts';

type State = UnderwayTask['state'];

/**
 * What all tasks of a finding must have done for it to be history, once it is over (`until` <= now).
 * never: what a plan states of itself, names, counts, and the rules about the day under way: true or not, whatever the hour.
 * ended: what the plan still decides while a step goes on.
 * begun: ended or begun.
 */
const HISTORY_WHEN: Readonly<Record<RuleCode, 'never' | 'ended' | 'begun'>> = {
  SAME_SCENARIO: 'never',
  KNOWN_NAMES: 'never',
  DAY_WINDOW: 'never',
  STEP_COMPLETE: 'never',
  TRAY_COUNT: 'never',
  BATCH_MAKEUP: 'never',
  // When a step that has begun ends is the plan's to say, even when it says a minute gone by.
  STEP_MINUTES: 'ended',
  // Over when the second of the two steps begins.
  STEP_ORDER: 'begun',
  // Over when the tray begins.
  SHAPE_WITHIN: 'begun',
  // Each stretch of too many is cut in two at now.
  BOWL_CAPACITY: 'begun',
  BENCH_CAPACITY: 'begun',
  SHELF_CAPACITY: 'begun',
  RETARDER_CAPACITY: 'begun',
  DECK_CAPACITY: 'begun',
  RACK_CAPACITY: 'begun',
  PLACE_POSITION: 'begun',
  // Over when the step ends.
  BOWL_SIZE: 'begun',
  SHELF_TEMPERATURE: 'begun',
  RETARDER_TEMPERATURE: 'begun',
  STEAM: 'begun',
  PLACE_KIND: 'begun',
  // The minutes up to now and those after it are looked at apart.
  DECK_TEMPERATURE: 'begun',
  // Of moves, which are no tasks: over when the move ends. Of bakes: as DECK_TEMPERATURE.
  DECK_LIMITS: 'begun',
  HEAT_RATE: 'begun',
  // Over when the two no longer bake side by side.
  LOAD_TOGETHER: 'begun',
  // Over when the work ends, or the part of it that is wrong.
  HANDS_ON: 'begun',
  PERSON_BUSY: 'begun',
  PERSON_HOURS: 'begun',
  PERSON_CANNOT: 'begun',
  AS_BEGUN: 'never',
  NOT_BEFORE_NOW: 'never',
  STAYS_DECIDED: 'never',
  // Each bake and mix is cut in two at now; into a cabinet: over when it goes in.
  OUT_OF_USE: 'begun',
  CLOCK_TIMES: 'never',
  ORDER_FIGURES: 'never',
  SCORE: 'never',
};

/** How far along each task of the plan is, by its id. Where two share an id, the one that is less far. */
function stateById(day: JudgedDay): ReadonlyMap<string, State> {
  const stateOf = new Map(allRuns(day).map(({ named, record }) => [named, record?.state ?? 'planned']));
  const states = new Map<string, State>();
  const farness = { planned: 0, begun: 1, ended: 2 };
  for (const named of day.tasks) {
    const state = stateOf.get(named) ?? 'planned';
    const other = states.get(named.id);
    if (other === undefined || farness[state] < farness[other]) states.set(named.id, state);
  }
  return states;
}

/** Leaves the findings of a rule that still matter. In a day that is not under way, all do. */
export function sinceNow(day: JudgedDay): (rule: RuleCode, findings: readonly Finding[]) => readonly Finding[] {
  const now = day.scenario.underway?.now;
  if (now === undefined) return (_, findings) => findings;
  const states = stateById(day);
  return (rule, findings) => {
    const when = HISTORY_WHEN[rule];
    if (when === 'never') return findings;
    return findings.flatMap((finding) => {
      const isPast = finding.taskIds.every((id) => {
        const state = states.get(id) ?? 'planned';
        return state === 'ended' || (state === 'begun' && when === 'begun');
      });
      if (!isPast) return [finding];
      if (finding.until !== undefined && finding.until <= now) return [];
      return [finding.minute !== undefined && finding.minute < now ? { ...finding, minute: now } : finding];
    });
  };
}
