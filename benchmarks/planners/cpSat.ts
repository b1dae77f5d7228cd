// CP-SAT as a benchmark sees it: one process, one run; its log tells what it held at each mark, and every plan is judged.
import { cpSatAnswerSchema } from './answers.ts';
import { runNode } from './childProcess.ts';
import type { Instance, Row } from './instance.ts';
import { judgedFigures } from './judged.ts';

const CHILD = ['--import', 'tsx', 'benchmarks/planners/cpSatChild.ts'];
export const CP_SAT_WORKERS = 2;

const NO_PLAN = { cost: null, lateTrayMinutes: 0, leftOutTrays: 0, finishMinute: 0 };

/** One row for each mark in seconds, ascending; the last is its limit. */
export async function cpSatRows(instance: Instance, marks: readonly number[], source: string): Promise<Row[]> {
  const limit = Math.max(...marks);
  const words = [...CHILD, instance.file, '--marks', marks.join(','), '--workers', String(CP_SAT_WORKERS)];
  const { output } = await runNode(words, limit);
  const answer = cpSatAnswerSchema.parse(JSON.parse(output));
  return answer.held.map(({ atSeconds, plan, lowerBound }) => {
    const figures = plan === null ? { ...NO_PLAN, lowerBound } : judgedFigures(instance.scenario, plan, 'CP-SAT');
    return {
      set: instance.set,
      scenario: instance.name,
      trays: instance.trays,
      planner: 'cp-sat',
      limitSeconds: atSeconds,
      ...figures,
      isProved: figures.cost !== null && figures.cost === figures.lowerBound,
      seconds: Math.min(atSeconds, answer.seconds),
      cores: answer.cpuSeconds / answer.seconds,
      peakMb: answer.peakMb,
      source,
    };
  });
}
