// What has no room for more trays, as people say it. Used by capacity and by the verdicts of compare.
import type { Capacity } from '../../model/comparison.ts';
import type { ResourceUse } from '../../model/why.ts';
import type { WorkKind } from './trayWork.ts';

type Full = NonNullable<Capacity['full']>;

const OF_PLACE: Readonly<Record<ResourceUse['kind'], string>> = {
  deck: 'the oven',
  shelf: 'the proofer',
  retarder: 'the retarder',
  bench: 'the bench',
  bowl: 'the mixer',
  rack: 'the cooling rack',
  person: 'the time of the people',
};

/** What a proof by work names. */
export function fullByWork(kind: WorkKind): Full {
  return kind === 'steam' ? { kind: 'deck', words: 'the deck with steam' } : fullByClock(kind);
}

/** The kind of the busiest place or person of a plan. */
export function fullByClock(kind: ResourceUse['kind']): Full {
  return { kind, words: OF_PLACE[kind] };
}

/** "the oven is full"; of hands: "nobody has time for more". */
export function isFullWords({ kind, words }: Full): string {
  return kind === 'person' ? 'nobody has time for more' : `${words} is full`;
}
