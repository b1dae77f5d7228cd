// Plans one scenario with CP-SAT in a process of its own and prints what it held at each mark. Started by planners/cpSat.ts.
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { readScenario } from '../../src/read/readScenario.ts';
import { solveShop } from '../cpsat/solveShop.ts';
import type { CpSatAnswer } from './answers.ts';
import { planFrom } from './planFrom.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    marks: { type: 'string', default: '60' },
    workers: { type: 'string', default: '2' },
    seed: { type: 'string', default: '1' },
  },
});
const [file = ''] = positionals;
const reading = readScenario(readFileSync(file, 'utf8'), file);
if (!reading.ok) throw new Error(reading.errors.map((error) => error.says).join(' '));
const scenario = reading.value;
const compiled = compileScenario(scenario);
const marks = values.marks.split(',').map(Number);
const seed = Number(values.seed);
const limits = { seconds: Math.max(...marks), workers: Number(values.workers), seed };
const run = await solveShop(compiled.problem, limits, marks);
const answer: CpSatAnswer = {
  isProved: run.isProved,
  seconds: run.seconds,
  cpuSeconds: run.cpuSeconds,
  peakMb: process.resourceUsage().maxRSS / 1024,
  held: run.held.map(({ atSeconds, schedule, cost, lowerBound }) => {
    if (schedule === null) return { atSeconds, plan: null, lowerBound };
    const origin = { seed, seconds: atSeconds, version: 'CP-SAT' };
    return { atSeconds, plan: planFrom(scenario, compiled, { schedule, lowerBound, cost, stopped: 'time' }, origin), lowerBound };
  }),
};
process.stdout.write(JSON.stringify(answer), () => process.exit(0));
