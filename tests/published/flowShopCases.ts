// Flow shops: every job through the machines in one order; with room to wait between them, and without waiting.
import { z } from 'zod';
import { instancesOf } from './benchFolder.ts';
import { type Jobs, jobShopProblem, recountJobShop, type Variant } from './jobShopCases.ts';
import type { PublishedCase } from './publishedCase.ts';

const schema = z.object({
  processingTimes: z.array(z.array(z.number())),
  computedHere: z.object({ permutationOptimum: z.number(), noWaitOptimum: z.number() }),
});

export function flowShopCases(): PublishedCase[] {
  return instancesOf('flowshop').flatMap(({ name, data }) => {
    const { processingTimes, computedHere } = schema.parse(data);
    const jobs: Jobs = processingTimes.map((times) => times.map((duration, machine) => [machine, duration] as const));
    const caseOf = (called: string, kind: Variant['kind'], best: number): PublishedCase => {
      const variant: Variant = { kind, operators: Number.POSITIVE_INFINITY };
      return {
        folder: 'flowshop',
        name: called,
        problem: jobShopProblem(jobs, variant),
        recount: (schedule) => recountJobShop(jobs, variant, schedule),
        published: { best, isFeasible: true, isRead: false },
        priceShift: 0,
      };
    };
    return [
      // On two and three machines some permutation schedule is best of all (Johnson 1954), so the value holds for any schedule.
      caseOf(name, 'classic', computedHere.permutationOptimum),
      caseOf(`${name} no-wait`, 'no-wait', computedHere.noWaitOptimum),
    ];
  });
}
