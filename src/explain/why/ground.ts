// The rest of a plan as it stands: places, people and decks with some trays or batches taken out. Used by why to try them again.
import { type JudgedDay, judgedDayOf } from '../../check/judgedDay.ts';
import type { WrittenPlan } from '../../model/writtenPlan.ts';
import { type DeckRange, deckRanges } from './deckRange.ts';
import { heldPerMinute, type Resource, resourcesOf } from './resources.ts';

/** A place or person with room counted. */
export type Standing = {
  readonly resource: Resource;
  readonly held: Uint16Array;
  /** Minutes from each minute on for which there is room for one more. */
  readonly freeRun: Int32Array;
};

export type Ground = {
  readonly day: JudgedDay;
  /** Minutes in the day. */
  readonly minutes: number;
  readonly standing: readonly Standing[];
  readonly deckRanges: ReadonlyMap<string, DeckRange>;
};

/** Which tasks are taken out. */
export type Out = { readonly trays: ReadonlySet<string>; readonly batches: ReadonlySet<string> };

function standingOf(resource: Resource): Standing {
  const held = heldPerMinute(resource);
  const freeRun = new Int32Array(held.length + 1);
  for (let t = held.length - 1; t >= 0; t--) {
    const hasRoom = (held[t] as number) < resource.room && resource.open[t] === 1;
    freeRun[t] = hasRoom ? (freeRun[t + 1] as number) + 1 : 0;
  }
  return { resource, held, freeRun };
}

/** Hands of a load that goes on without the tray that carried them stay at work. */
function handsThatStay(day: JudgedDay, out: Out): WrittenPlan['tasks'] {
  const loads = day.trays.filter(({ id }) => out.trays.has(id)).flatMap(({ runs }) => runs.flatMap((run) => run?.load ?? []));
  return loads.flatMap((load) => {
    const others = load.bakes.filter(({ named }) => named.task.tray === undefined || !out.trays.has(named.task.tray));
    const isCarrierOut = load.carrier.task.tray !== undefined && out.trays.has(load.carrier.task.tray);
    const other = others[0];
    return isCarrierOut && other !== undefined ? [{ ...other.named.task, handsOn: load.carrier.task.handsOn }] : [];
  });
}

export function groundOf(whole: JudgedDay, out: Out): Ground {
  const { scenario, plan } = whole;
  const stays = handsThatStay(whole, out);
  const tasks = plan.tasks
    .filter(({ tray, batch }) => (tray === undefined ? batch === undefined || !out.batches.has(batch) : !out.trays.has(tray)))
    .map((task) => stays.find((one) => one.id === task.id && one.tray === task.tray && one.start === task.start) ?? task);
  const day = judgedDayOf(scenario, { tasks, decks: plan.decks });
  return {
    day,
    minutes: day.clock.minutes,
    standing: resourcesOf(day).map(standingOf),
    deckRanges: deckRanges(day),
  };
}
