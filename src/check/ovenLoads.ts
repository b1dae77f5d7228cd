// Which bakes go into the oven as one load, and how long loading and unloading take. On a deck loaded any time every bake is
// a load of its own; on one loaded together, bakes that overlap are one (and LOAD_TOGETHER sees whether they agree).
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

/** Bakes of one deck, those that overlap gathered; bakes that only touch stay apart. */
function overlapping(bakes: readonly PairedBake[]): readonly (readonly [PairedBake, ...PairedBake[]])[] {
  const inOrder = [...bakes].sort((a, b) => a.named.task.start - b.named.task.start);
  const groups: [PairedBake, ...PairedBake[]][] = [];
  let lastEnd = Number.NEGATIVE_INFINITY;
  for (const bake of inOrder) {
    const { start, end } = bake.named.task;
    const group = groups[groups.length - 1];
    if (group !== undefined && start < lastEnd) group.push(bake);
    else groups.push([bake]);
    lastEnd = Math.max(lastEnd, end);
  }
  return groups;
}

/** The load of each bake. `isTogether` says whether a deck, named oven/deck, is loaded together. */
export function ovenLoads(
  bakes: readonly PairedBake[],
  isTogether: (deckId: string) => boolean,
): ReadonlyMap<NamedTask, OvenLoad> {
  const single: OvenLoad[] = [];
  const byDeck = new Map<string, PairedBake[]>();
  for (const bake of bakes) {
    const { place } = bake.named.task;
    if (place?.kind !== 'deck' || !isTogether(place.id)) {
      single.push(ovenLoad([bake]));
      continue;
    }
    const onDeck = byDeck.get(place.id);
    if (onDeck === undefined) byDeck.set(place.id, [bake]);
    else onDeck.push(bake);
  }
  const loads = [...single, ...[...byDeck.values()].flatMap(overlapping).map(ovenLoad)];
  return new Map(loads.flatMap((load) => load.bakes.map(({ named }) => [named, load] as const)));
}
