// What the spread of each step adds to lateness: the same mornings once more in which that step takes the minutes stated.
// The chances are those of the other runs (common random numbers), so that few mornings tell.
import type { Course, SpreadStep } from './course.ts';
import type { DueProduct } from './dueTrays.ts';
import type { Mornings, Without } from './mornings.ts';
import { lateTrayMinutes } from './morningTally.ts';
import { type Through, throughMornings } from './throughMornings.ts';

export type StepAdds = { readonly step: SpreadStep; readonly lateTrayMinutes: number };
export type AddedLateness = {
  /** The step that adds most first. */
  readonly hurts: readonly StepAdds[];
  readonly hurtsMost: (StepAdds & { readonly of: string }) | null;
};

function toTenth(minutes: number): number {
  return Math.round(minutes * 10) / 10 + 0;
}

/** Minutes late, a morning on average, that go away without the spread of each of these. */
async function goingAway(
  course: Course,
  products: readonly DueProduct[],
  mornings: Mornings,
  through: Through,
  withouts: readonly Without[],
): Promise<readonly number[]> {
  let all = 0;
  const sums = withouts.map(() => 0);
  const done = await throughMornings(course, mornings, through, (chances, size) => {
    mornings.run(chances, size, null);
    all += lateTrayMinutes(mornings, course, products);
    for (const [index, without] of withouts.entries()) {
      mornings.run(chances, size, without);
      sums[index] = (sums[index] ?? 0) + lateTrayMinutes(mornings, course, products);
    }
  });
  return sums.map((sum) => toTenth((all - sum) / done));
}

export async function addedLateness(
  course: Course,
  products: readonly DueProduct[],
  mornings: Mornings,
  through: Through,
): Promise<AddedLateness> {
  const steps = [...new Set(course.draws.map(({ step }) => step))];
  const gone = await goingAway(
    course,
    products,
    mornings,
    through,
    steps.map((step) => ({ step })),
  );
  const hurts = steps
    .map((step, index) => ({ step, lateTrayMinutes: gone[index] ?? 0 }))
    .sort((a, b) => b.lateTrayMinutes - a.lateTrayMinutes || (a.step < b.step ? -1 : 1));
  const [most] = hurts;
  if (most === undefined || most.lateTrayMinutes <= 0) return { hurts, hurtsMost: null };
  const ofs = [...new Set(course.draws.flatMap(({ step, of }) => (step === most.step ? [of] : [])))];
  const goneOf = await goingAway(
    course,
    products,
    mornings,
    through,
    ofs.map((of) => ({ step: most.step, of })),
  );
  const [worst] = ofs
    .map((of, index) => ({ step: most.step, of, lateTrayMinutes: goneOf[index] ?? 0 }))
    .sort((a, b) => b.lateTrayMinutes - a.lateTrayMinutes || (a.of < b.of ? -1 : 1));
  return { hurts, hurtsMost: worst === undefined || worst.lateTrayMinutes <= 0 ? null : worst };
}
