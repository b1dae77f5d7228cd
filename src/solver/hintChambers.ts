// Gives the search the chambers the load packing would use, as a first guess it is free to drop.
import type { LoadPacking } from './bounds/chamberLoads.ts';
import type { Search } from './search.ts';

/** Per stay the chamber the packing deals it, in the order of its classes. */
export function hintChambers(search: Search, packing: LoadPacking): void {
  const hint = new Map<number, number>();
  const dealt = new Map<object, number>();
  for (const { stayClass, chamber, stays } of packing.share) {
    const from = dealt.get(stayClass) ?? 0;
    const until = Math.min(stayClass.stays.length, from + Math.round(stays));
    for (const stay of stayClass.stays.slice(from, until)) hint.set(stay, chamber);
    dealt.set(stayClass, until);
  }
  search.hint = (stay) => hint.get(stay) ?? -1;
}
