// How the search for a change ended, in the words of the answer. Used by the searches of whatWouldFit.
import type { Plan } from '../../model/plan.ts';
import type { FitChange, NotOffered, OfferedChange } from '../../model/wouldFit.ts';
import type { Variant } from './ladder.ts';

export type Outcome = { readonly offered: OfferedChange } | { readonly notOffered: NotOffered };

/** A search that can be left between two plans and taken up again. */
export type Search = AsyncGenerator<undefined, Outcome, undefined>;

export function offer(kind: FitChange, variant: Variant, isSmallest: boolean, plan: Plan): Outcome {
  const { amount, operations, does } = variant;
  const says = `${does}: ${isSmallest ? 'less is not enough, proved.' : 'the least found that is enough.'}`;
  return { offered: { kind, amount, isSmallest, operations: [...operations], says, plan } };
}

export function refuse(kind: FitChange, because: NotOffered['because'], says: string): Outcome {
  return { notOffered: { kind, because, says } };
}

const KIND_WORDS: Readonly<Record<FitChange, string>> = {
  'start-earlier': 'Starting earlier',
  'more-shelves': 'More shelves',
  'deck-place': 'One more place on a deck',
  'another-person': 'Another pair of hands',
  'move-order': 'A later time',
  'drop-pieces': 'Fewer pieces',
};

/** The time came to an end before the smallest change was found. */
export function outOfTime(kind: FitChange): Outcome {
  return refuse(kind, 'no-time', `${KIND_WORDS[kind]}: there was no time to try it out.`);
}

/** The time came to an end before the day with the change was planned from scratch. */
export function notSure(kind: FitChange, { does }: Variant): Outcome {
  return refuse(kind, 'not-sure', `${does}: a plan was found, but there was no time to plan that day from scratch and be sure.`);
}

/** A plan was found for `seen`, and from scratch none, of it or of a little more. */
export function notAgain(kind: FitChange, seen: Variant): Outcome {
  return refuse(
    kind,
    'not-found',
    `${seen.does}: it can be done, but planned from scratch the day left trays late or out again.`,
  );
}
