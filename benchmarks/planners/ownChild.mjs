// Plans one scenario with the program as it was built when the benchmark began, in a process of its own: the time limit
// counts from the start of the process and covers loading, reading, planning and judging. Started by planners/own.ts.
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { makePlan } from '../dist/program/planning.js';
import { readScenario } from '../dist/program/readScenario.js';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string' },
    effort: { type: 'string' },
    workers: { type: 'string', default: '2' },
    version: { type: 'string', default: '0' },
    'until-complete': { type: 'boolean', default: false },
  },
});

const reading = readScenario(readFileSync(positionals[0], 'utf8'), positionals[0]);
if (!reading.ok) throw new Error(reading.errors.map((error) => error.says).join(' '));

let firstComplete = null;
const plan = await makePlan(reading.value, {
  ...(values.seconds === undefined ? {} : { seconds: Number(values.seconds) }),
  ...(values.effort === undefined ? {} : { effort: Number(values.effort) }),
  workers: Number(values.workers),
  version: values.version,
  now: () => performance.now(),
  startedAtMs: 0,
  pause: () => new Promise((resume) => setImmediate(resume)),
  onProgress: ({ plannedTrays, trays, seconds }) => {
    if (plannedTrays === trays) firstComplete ??= seconds;
  },
  cancelled: () => values['until-complete'] && firstComplete !== null,
});
const { user, system } = process.cpuUsage();
const answer = {
  plan,
  seconds: performance.now() / 1000,
  firstCompleteSeconds: firstComplete,
  cpuSeconds: (user + system) / 1e6,
  peakMb: process.resourceUsage().maxRSS / 1024,
};
process.stdout.write(JSON.stringify(answer), () => process.exit(0));
