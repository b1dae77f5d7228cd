// Every check that looks at more than one value of a scenario, in the order they run. One file each in checks/.
import { batchesFit } from './checks/batchesFit.ts';
import { cabinetsFit } from './checks/cabinetsFit.ts';
import { dayAndZone } from './checks/dayAndZone.ts';
import { deckLimits } from './checks/deckLimits.ts';
import { decksFit } from './checks/decksFit.ts';
import { duplicateIds } from './checks/duplicateIds.ts';
import { flour } from './checks/flour.ts';
import { handsFor } from './checks/handsFor.ts';
import { mixHandsOn } from './checks/mixHandsOn.ts';
import { orderTimes } from './checks/orderTimes.ts';
import { peopleHours } from './checks/peopleHours.ts';
import { shortestPath } from './checks/shortestPath.ts';
import { skippedTimes } from './checks/skippedTimes.ts';
import { trayCount } from './checks/trayCount.ts';
import { underwayDecks } from './checks/underwayDecks.ts';
import { underwayNames } from './checks/underwayNames.ts';
import { underwayPlaces } from './checks/underwayPlaces.ts';
import { underwayStates } from './checks/underwayStates.ts';
import { underwaySteps } from './checks/underwaySteps.ts';
import { underwayTrays } from './checks/underwayTrays.ts';
import { unknownIds } from './checks/unknownIds.ts';
import type { CodedError } from './inputErrorAt.ts';
import type { Parts } from './parts.ts';

const CHECKS: readonly ((parts: Parts) => readonly CodedError[])[] = [
  duplicateIds,
  unknownIds,
  dayAndZone,
  skippedTimes,
  deckLimits,
  decksFit,
  cabinetsFit,
  batchesFit,
  flour,
  mixHandsOn,
  peopleHours,
  handsFor,
  orderTimes,
  shortestPath,
  trayCount,
  underwayNames,
  underwayTrays,
  underwayPlaces,
  underwaySteps,
  underwayStates,
  underwayDecks,
];

/** What the checks find in the sound parts of a scenario. */
export function crossErrors(parts: Parts): readonly CodedError[] {
  return CHECKS.flatMap((check) => check(parts));
}
