// Our own planner as a benchmark sees it: a process for each plan, timed from its start to its end, two threads to search with.
import type { Plan } from '../../src/model/plan.ts';
import { type OwnAnswer, ownAnswerSchema } from './answers.ts';
import { runNode } from './childProcess.ts';
import type { Instance, Row } from './instance.ts';
import { judgedFigures } from './judged.ts';

/** The library, for what the command does not tell: when the first plan was in hand. */
const CHILD = 'benchmarks/planners/ownChild.mjs';
const COMMAND = 'benchmarks/planners/ownCommand.mjs';

export type OwnRun = OwnAnswer & { readonly wallSeconds: number };

/** Runs the child on an instance. `words` are its options. */
export async function runOwn(instance: Instance, words: readonly string[], limitSeconds: number): Promise<OwnRun> {
  const { output, wallSeconds } = await runNode([CHILD, instance.file, ...words], limitSeconds);
  return { ...ownAnswerSchema.parse(JSON.parse(output)), wallSeconds };
}

/** Runs the command on an instance, as a baker would. */
async function runCommand(instance: Instance, seconds: number): Promise<OwnRun> {
  const words = ['plan', instance.file, '--json', '--seconds', String(seconds), '--workers', '2'];
  const { output, wallSeconds } = await runNode([COMMAND, ...words], seconds);
  return { ...ownAnswerSchema.parse(JSON.parse(output)), wallSeconds };
}

function isProved(plan: Plan): boolean {
  return plan.score.cost === plan.score.lowerBound;
}

/** One row: the plan after so many seconds. */
export async function ownRow(instance: Instance, seconds: number, source: string): Promise<Row> {
  const run = await runCommand(instance, seconds);
  return {
    set: instance.set,
    scenario: instance.name,
    trays: instance.trays,
    planner: 'ovenward',
    limitSeconds: seconds,
    ...judgedFigures(instance.scenario, run.plan, 'ovenward'),
    isProved: isProved(run.plan),
    seconds: run.wallSeconds,
    cores: run.cpuSeconds / run.seconds,
    peakMb: run.peakMb,
    source,
  };
}
