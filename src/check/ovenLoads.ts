// Which bakes go into the oven as one load, and how long loading and unloading take. On a deck loaded any time every bake is
// a load of its own; on one loaded together, the bakes with the same begin and end are one.
import type { Bake } from '../model/steps.ts';
import type { NamedTask } from './nameTasks.ts';

export type PairedBake = { readonly step: Bake; readonly named: NamedTask };

export type OvenLoad = {
  readonly bakes: readonly PairedBake[];
  /** The bake that carries the load's hands-on: the one in the lowest position. */
  readonly carrier: NamedTask;
  /** Minutes of loading before the bake begins: the longest of its trays. */
  readonly loadMinutes: number;
  /** Minutes of unloading after the bake ends: the longest of its trays. */
  readonly unloadMinutes: number;
};

function ovenLoad(bakes: readonly [PairedBake, ...PairedBake[]]): OvenLoad {
  const positionOf = (bake: PairedBake) => bake.named.task.place?.position ?? 1;
  const lowest = bakes.reduce((low, bake) => (positionOf(bake) < positionOf(low) ? bake : low));
  return {
    bakes,
    carrier: lowest.named,
    loadMinutes: bakes.reduce((longest, bake) => Math.max(longest, bake.step.load), 0),
    unloadMinutes: bakes.reduce((longest, bake) => Math.max(longest, bake.step.unload), 0),
  };
}

/** The load of each bake. `isTogether` says whether a deck, named oven/deck, is loaded together. */
export function ovenLoads(
  bakes: readonly PairedBake[],
  isTogether: (deckId: string) => boolean,
): ReadonlyMap<NamedTask, OvenLoad> {
  const groups = new Map<string, [PairedBake, ...PairedBake[]]>();
  bakes.forEach((bake, number) => {
    const { place, start, end } = bake.named.task;
    const isShared = place?.kind === 'deck' && isTogether(place.id);
    const key = isShared ? JSON.stringify([place.id, start, end]) : String(number);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [bake]);
    else group.push(bake);
  });
  const loads = [...groups.values()].map(ovenLoad);
  return new Map(loads.flatMap((load) => load.bakes.map(({ named }) => [named, load] as const)));
}
