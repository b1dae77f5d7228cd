// The judge: reads a scenario and a plan and nothing else, recounts every figure, and names every place where the plan does
// not meet a rule. Every plan the program hands out has passed it; anybody's plan can be judged by it.
import { RULES, type RuleCode } from '../model/rules.ts';
import type { Scenario } from '../model/scenario.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import { figuresOf } from './figures.ts';
import type { RuleCheck, Verdict } from './finding.ts';
import { sinceNow } from './history.ts';
import { judgedDayOf } from './judgedDay.ts';
import { asBegun } from './rules/asBegun.ts';
import { batchMakeup } from './rules/batchMakeup.ts';
import { benchCapacity } from './rules/benchCapacity.ts';
import { bowlCapacity } from './rules/bowlCapacity.ts';
import { bowlSize } from './rules/bowlSize.ts';
import { clockTimes } from './rules/clockTimes.ts';
import { dayWindow } from './rules/dayWindow.ts';
import { deckCapacity } from './rules/deckCapacity.ts';
import { deckLimits } from './rules/deckLimits.ts';
import { deckTemperature } from './rules/deckTemperature.ts';
import { handsOn } from './rules/handsOn.ts';
import { heatRate } from './rules/heatRate.ts';
import { knownNames } from './rules/knownNames.ts';
import { loadTogether } from './rules/loadTogether.ts';
import { notBeforeNow } from './rules/notBeforeNow.ts';
import { orderFigures } from './rules/orderFigures.ts';
import { outOfUse } from './rules/outOfUse.ts';
import { personBusy } from './rules/personBusy.ts';
import { personCannot } from './rules/personCannot.ts';
import { personHours } from './rules/personHours.ts';
import { placeKind } from './rules/placeKind.ts';
import { placePosition } from './rules/placePosition.ts';
import { rackCapacity } from './rules/rackCapacity.ts';
import { retarderCapacity } from './rules/retarderCapacity.ts';
import { retarderTemperature } from './rules/retarderTemperature.ts';
import { sameScenario } from './rules/sameScenario.ts';
import { score } from './rules/score.ts';
import { shapeWithin } from './rules/shapeWithin.ts';
import { shelfCapacity } from './rules/shelfCapacity.ts';
import { shelfTemperature } from './rules/shelfTemperature.ts';
import { staysDecided } from './rules/staysDecided.ts';
import { steam } from './rules/steam.ts';
import { stepComplete } from './rules/stepComplete.ts';
import { stepMinutes } from './rules/stepMinutes.ts';
import { stepOrder } from './rules/stepOrder.ts';
import { trayCount } from './rules/trayCount.ts';

const CHECKS: Readonly<Record<RuleCode, RuleCheck>> = {
  SAME_SCENARIO: sameScenario,
  KNOWN_NAMES: knownNames,
  DAY_WINDOW: dayWindow,
  STEP_COMPLETE: stepComplete,
  TRAY_COUNT: trayCount,
  BATCH_MAKEUP: batchMakeup,
  STEP_MINUTES: stepMinutes,
  STEP_ORDER: stepOrder,
  SHAPE_WITHIN: shapeWithin,
  BOWL_CAPACITY: bowlCapacity,
  BOWL_SIZE: bowlSize,
  BENCH_CAPACITY: benchCapacity,
  SHELF_CAPACITY: shelfCapacity,
  SHELF_TEMPERATURE: shelfTemperature,
  RETARDER_CAPACITY: retarderCapacity,
  RETARDER_TEMPERATURE: retarderTemperature,
  DECK_CAPACITY: deckCapacity,
  DECK_TEMPERATURE: deckTemperature,
  DECK_LIMITS: deckLimits,
  HEAT_RATE: heatRate,
  STEAM: steam,
  LOAD_TOGETHER: loadTogether,
  RACK_CAPACITY: rackCapacity,
  HANDS_ON: handsOn,
  PERSON_BUSY: personBusy,
  PERSON_HOURS: personHours,
  PERSON_CANNOT: personCannot,
  PLACE_KIND: placeKind,
  PLACE_POSITION: placePosition,
  AS_BEGUN: asBegun,
  NOT_BEFORE_NOW: notBeforeNow,
  STAYS_DECIDED: staysDecided,
  OUT_OF_USE: outOfUse,
  CLOCK_TIMES: clockTimes,
  ORDER_FIGURES: orderFigures,
  SCORE: score,
};

/** The codes in the order the judge goes through them. */
const CODES = Object.keys(CHECKS).filter((code): code is RuleCode => code in RULES);

/** Judges a plan of ours or anybody's. No breaches: the plan works out. The figures are the judge's own in any case. */
export function judge(scenario: Scenario, plan: WrittenPlan): Verdict {
  const day = judgedDayOf(scenario, plan);
  const figures = figuresOf(day);
  const stillMatter = sinceNow(day);
  const breaches = CODES.flatMap((rule) =>
    stillMatter(rule, CHECKS[rule](day, figures)).map(({ until: _until, ...finding }) => ({
      rule,
      ...finding,
      doThis: RULES[rule].doThis,
    })),
  );
  return { breaches, figures };
}
