// `npm run bench:rounds`: rounds of search per second on scenarios of 30 trays, one thread, whatever the program calls a round.
import { parseArgs } from 'node:util';
import { judgedFigures } from '../planners/judged.ts';
import { runOwn } from '../planners/own.ts';
import { table } from '../report/markdown.ts';
import { writeSection } from '../report/section.ts';
import { KINDS } from '../scenarios/kinds.ts';
import { generatedInstance } from './instances.ts';
import { sayMachine, thisMachine } from './machine.ts';
import { writeJson } from './results.ts';

const TRAYS = 30;
const { values } = parseArgs({ options: { seconds: { type: 'string', default: '10' }, seed: { type: 'string', default: '1' } } });

const runs: { scenario: string; rounds: number; seconds: number; cost: number }[] = [];
for (const kind of KINDS) {
  const instance = generatedInstance({ kind, trays: TRAYS, seed: Number(values.seed) });
  const { plan } = await runOwn(instance, ['--seconds', values.seconds, '--workers', '1'], Number(values.seconds));
  const { cost } = judgedFigures(instance.scenario, plan, 'ovenward');
  runs.push({ scenario: instance.name, rounds: plan.solver.effort, seconds: plan.solver.seconds, cost });
}
writeJson('rounds.json', { machine: thisMachine(), runs });
const rows = runs.map(({ scenario, rounds, seconds, cost }) => {
  return [scenario, `${rounds}`, seconds.toFixed(1), (rounds / seconds).toFixed(0), `${cost}`];
});
const head = ['scenario', 'rounds', 'seconds', 'rounds per second', 'price'];
const text = `Measured on ${sayMachine(thisMachine())}, one thread.\n\n${table(head, rows)}`;
writeSection('rounds', text);
console.log(text);
