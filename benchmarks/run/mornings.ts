// `npm run bench:mornings`: seconds that 10,000 simulated mornings take on days of 30 trays, with all that is told of them.
import { performance } from 'node:perf_hooks';
import { makePlan } from '../../src/planning.ts';
import { howSure, USUAL_MORNINGS } from '../../src/questions/howSure/howSure.ts';
import { table } from '../report/markdown.ts';
import { KINDS } from '../scenarios/kinds.ts';
import { generatedInstance } from './instances.ts';
import { sayMachine, thisMachine } from './machine.ts';

const TRAYS = 30;
const EFFORT = 100;
const RUNS = 3;

const rows: string[][] = [];
for (const kind of KINDS) {
  const { scenario, name } = generatedInstance({ kind, trays: TRAYS, seed: 1 });
  const plan = await makePlan(scenario, { effort: EFFORT, now: () => performance.now(), version: 'benchmark' });
  const [seconds, processorSeconds]: [number[], number[]] = [[], []];
  for (let run = 0; run < RUNS; run++) {
    const [startedMs, used] = [performance.now(), process.cpuUsage()];
    const { mornings } = await howSure(scenario, plan);
    seconds.push((performance.now() - startedMs) / 1000);
    processorSeconds.push(process.cpuUsage(used).user / 1e6);
    if (mornings !== USUAL_MORNINGS) throw new Error(`${name}: ${mornings} mornings`);
  }
  const [first, fastest, busy] = [seconds[0] ?? 0, Math.min(...seconds), Math.min(...processorSeconds)];
  rows.push([name, `${plan.tasks.length}`, ...[first, fastest, busy].map((each) => each.toFixed(2))]);
}
console.log(`Measured on ${sayMachine(thisMachine())}, one thread. ${USUAL_MORNINGS} mornings, ${RUNS} runs, seconds.\n`);
console.log(table(['scenario', 'tasks', 'first run', 'fastest run', 'least processor time'], rows));
