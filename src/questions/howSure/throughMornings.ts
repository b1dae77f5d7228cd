// Goes through so many mornings of a course, block by block, with the same chances each time for the same seed.
import { normalsFrom } from './chance.ts';
import type { Course } from './course.ts';
import type { Mornings } from './mornings.ts';

export type Through = {
  /** Seed of the chances, 0 or more. */
  readonly seed: number;
  /** Mornings to go through. */
  readonly count: number;
  /** Lets other work be done between two blocks. */
  readonly pause: () => Promise<void>;
  /** Whether time is over; asked after each block, once there are enough mornings to tell anything. */
  readonly isOver: () => boolean;
};

/** Fewer mornings than this tell nothing. They take a small part of a second. */
const ENOUGH_MORNINGS = 500;

/** Hands the chances of each block to `look` and returns how many mornings it were. */
export async function throughMornings(
  course: Course,
  mornings: Mornings,
  { seed, count, pause, isOver }: Through,
  look: (chances: Float64Array, size: number) => void,
): Promise<number> {
  const normals = normalsFrom(seed);
  const chances = new Float64Array(Math.max(1, course.chances) * mornings.block);
  let done = 0;
  while (done < count) {
    const size = Math.min(mornings.block, count - done);
    normals(chances);
    look(chances, size);
    done += size;
    if (done >= ENOUGH_MORNINGS && isOver()) break;
    await pause();
  }
  return done;
}
