// `ovenward plan` as it was built when the benchmark began, in a process of its own; what it prints is handed on with what the process took.
// Its words are those of the command. Started by planners/own.ts.
import { main } from '../dist/program/main.js';

const { stdout } = process;
const printed = [];
const write = stdout.write.bind(stdout);
stdout.write = (text, ...rest) => {
  printed.push(String(text));
  const done = rest.at(-1);
  if (typeof done === 'function') queueMicrotask(done);
  return true;
};
await main({ startedAtMs: 0 });
const { user, system } = process.cpuUsage();
const answer = {
  plan: JSON.parse(printed.join('')),
  seconds: performance.now() / 1000,
  firstCompleteSeconds: null,
  cpuSeconds: (user + system) / 1e6,
  peakMb: process.resourceUsage().maxRSS / 1024,
};
// A plan with late trays is an answer too; what is no plan has not come this far.
process.exitCode = 0;
write(JSON.stringify(answer));
