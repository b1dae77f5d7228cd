// Finds a small part of a day that cannot be met: QuickXplain (Junker 2004, AAAI), then every member dropped in turn. Used by clash.
import type { LimitKind } from '../../model/why.ts';
import type { Candidate } from './dayOf.ts';
import type { Verdict, Verdicts } from './verdicts.ts';

type Impossible = Extract<Verdict, { is: 'impossible' }>;

/** A set proved impossible, and for each member whether the rest is possible without it. */
export type SmallSet = {
  readonly members: readonly Candidate[];
  readonly bound: Impossible['bound'];
  readonly withoutIt: ReadonlyMap<Candidate, 'possible' | 'unknown'>;
};

/**
 * Of `candidates`, a part that cannot be met together with `background`; background and candidates together cannot be met.
 * `hasGrown`: whether the background has grown since it was last asked. What cannot be found out counts as possible, which may
 * leave more in the part than is needed, never less.
 */
async function quickXplain(
  verdicts: Verdicts,
  background: readonly Candidate[],
  hasGrown: boolean,
  candidates: readonly Candidate[],
): Promise<readonly Candidate[]> {
  if (hasGrown && (await verdicts.isImpossible(new Set(background)))) return [];
  if (candidates.length <= 1) return candidates;
  const half = Math.ceil(candidates.length / 2);
  const first = candidates.slice(0, half);
  const second = candidates.slice(half);
  const fromSecond = await quickXplain(verdicts, [...background, ...first], true, second);
  const fromFirst = await quickXplain(verdicts, [...background, ...fromSecond], fromSecond.length > 0, first);
  return [...fromFirst, ...fromSecond];
}

/** Shares of what is left of the budget for one day, pass by pass over what is not known yet. */
const PASSES = [1 / 4, 1 / 2];

/** Drops members while what is left is proved impossible; notes those whose rest is possible. */
async function dropped(verdicts: Verdicts, members: readonly Candidate[], bound: Impossible['bound']): Promise<SmallSet> {
  let kept = members;
  let proof = bound;
  let withoutIt = new Map<Candidate, 'possible' | 'unknown'>();
  for (const share of PASSES) {
    for (let at = kept.length - 1; at >= 0; at--) {
      const member = kept[at] as Candidate;
      if (withoutIt.get(member) === 'possible') continue;
      const rest = kept.filter((_, index) => index !== at);
      const verdict = await verdicts.of(new Set(rest), share);
      if (verdict.is !== 'impossible') {
        withoutIt.set(member, verdict.is);
        continue;
      }
      // What was found of the larger set says nothing of this one: all its members are tried.
      kept = rest;
      proof = verdict.bound;
      withoutIt = new Map();
      at = kept.length;
    }
  }
  return { members: kept, bound: proof, withoutIt };
}

/** Kinds of limits that bind a day by themselves often: tried with all orders before everything at once. */
const GUESSES: readonly (readonly LimitKind[])[] = [
  ['deck-room', 'day-start'],
  ['shelves', 'day-start'],
  ['hands', 'hours', 'day-start'],
  ['deck-room', 'heat-rates', 'day-start'],
  ['day-start', 'day-end', 'hours'],
  ['shelves', 'product-standing', 'day-start', 'deck-room', 'heat-rates'],
];

/** Share of what is left of the budget for one guess: a good one saves most of the search. */
const GUESS_SHARE = 1 / 7;

/** The first guess that is proved impossible with all orders, else all candidates. */
async function firstGuess(verdicts: Verdicts, candidates: readonly Candidate[]): Promise<readonly Candidate[]> {
  for (const kinds of GUESSES) {
    const guess = candidates.filter((one) => one.is === 'order' || kinds.includes(one.limit.kind));
    if (await verdicts.isImpossible(new Set(guess), GUESS_SHARE)) return guess;
  }
  return candidates;
}

/** `candidates`, likely members first, of which all together are proved impossible with the argument `bound`. */
export async function smallSet(
  verdicts: Verdicts,
  candidates: readonly Candidate[],
  bound: Impossible['bound'],
): Promise<SmallSet> {
  const guess = await quickXplain(verdicts, [], false, await firstGuess(verdicts, candidates));
  const verdict = await verdicts.of(new Set(guess));
  if (verdict.is === 'impossible') return dropped(verdicts, guess, verdict.bound);
  // The guess rests on what was said of a part of it; without a proof of its own, the last set that has one is taken.
  return dropped(verdicts, candidates, bound);
}
