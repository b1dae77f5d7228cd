// What was found and proved of a morning's capacity, as the answer states it: figures and a sentence. Used by compare.
import { busiestOf } from '../../explain/busiest.ts';
import type { Capacity } from '../../model/comparison.ts';
import type { Scenario } from '../../model/scenario.ts';
import { fullByClock, fullByWork, isFullWords } from '../capacity/fullWords.ts';
import { scaledScenario } from '../capacity/scaledOrders.ts';
import type { CapacityFound } from '../capacity.ts';

/** Which trays are meant: of the day's mix, or of one product by name. */
export function trayWords(scenario: Scenario, of: string | undefined, count: number): string {
  const trays = count === 1 ? 'tray' : 'trays';
  if (of === undefined) return `${trays} of the day's mix`;
  return `${trays} of ${scenario.products.find(({ id }) => id === of)?.name ?? of}`;
}

function fullOf(scenario: Scenario, of: string | undefined, found: CapacityFound): Capacity['full'] {
  if (found.overfull !== null && found.limit === found.extra) return fullByWork(found.overfull);
  const scaled = found.plan === null ? null : scaledScenario(scenario, found.extra, of);
  if (found.plan !== null && scaled !== null) {
    const { busiest } = busiestOf(scaled, found.plan);
    if (busiest !== null) return fullByClock(busiest.kind);
  }
  return found.overfull === null ? null : fullByWork(found.overfull);
}

function sayLimit(found: CapacityFound, full: Capacity['full']): string {
  const trays = found.dayTrays + (found.limit ?? 0);
  if (found.limit === null) return 'how many more could be is not proved';
  if (found.limit > found.extra) return `no plan takes more than ${trays}`;
  return found.proof === 'work' && full !== null ? `no plan takes more: ${isFullWords(full)}` : 'no plan takes more: proved';
}

function sayCapacity(scenario: Scenario, of: string | undefined, found: CapacityFound, full: Capacity['full']): string {
  const { dayTrays, extra, limit } = found;
  const after = sayLimit(found, full);
  if (extra > 0) return `The morning takes ${extra} more ${trayWords(scenario, of, extra)}, ready on time; ${after}.`;
  if (extra === 0)
    return `The morning takes its ${dayTrays} trays, ready on time; ${limit === 0 ? 'proved to be the most' : `for more no plan was found, and ${after}`}.`;
  if (found.plan === null) return `For no tray a plan was found that has it ready on time; ${after}.`;
  return `Of its ${dayTrays} trays the morning takes ${dayTrays + extra}, ready on time; ${after}.`;
}

export function capacityAnswer(scenario: Scenario, of: string | undefined, found: CapacityFound): Capacity {
  const { dayTrays, extra, limit, proof } = found;
  const full = fullOf(scenario, of, found);
  return {
    of: of ?? null,
    dayTrays,
    foundTrays: dayTrays + extra,
    extraTrays: extra,
    limitTrays: limit === null ? null : dayTrays + limit,
    limitProof: limit === null ? null : proof,
    isExact: limit === extra,
    full,
    says: sayCapacity(scenario, of, found, full),
  };
}
