// `npm run bench:agree`: on small generated scenarios CP-SAT works until its plan is proved best; ovenward has to find the same
// price. Both plans are judged. Ends with exit code 1 when they do not agree on every scenario.
import { parseArgs } from 'node:util';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { solveShop } from '../cpsat/solveShop.ts';
import type { Instance } from '../planners/instance.ts';
import { type Figures, judgedFigures } from '../planners/judged.ts';
import { ownRow } from '../planners/own.ts';
import { planFrom } from '../planners/planFrom.ts';
import { type Agreement, agreementText, verdictOf } from '../report/agreementText.ts';
import { writeSection } from '../report/section.ts';
import type { Recipe } from '../scenarios/generateScenario.ts';
import { KINDS } from '../scenarios/kinds.ts';
import { generatedInstance } from './instances.ts';
import { sayMachine, thisMachine } from './machine.ts';
import { writeJson } from './results.ts';
import { sourceOf } from './sources.ts';

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '50' },
    seconds: { type: 'string', default: '10' },
    'cp-seconds': { type: 'string', default: '120' },
  },
});

/** Sizes in trays, both included. */
const LEAST_TRAYS = 4;
const MOST_TRAYS = 10;

/** All kinds and all sizes in turn, each with a seed of its own. */
function recipes(count: number): Recipe[] {
  const sizes = MOST_TRAYS - LEAST_TRAYS + 1;
  return Array.from({ length: count }, (_, i) => {
    const kind = KINDS[i % KINDS.length] ?? 'plain';
    return { kind, trays: MOST_TRAYS - (i % sizes), seed: 101 + i };
  });
}

async function byCpSat(instance: Instance, seconds: number): Promise<{ figures: Figures | null; isProved: boolean }> {
  const compiled = compileScenario(instance.scenario);
  const run = await solveShop(compiled.problem, { seconds, workers: 2, seed: 1 }, [seconds]);
  const held = run.held[0];
  if (held === undefined || held.schedule === null) return { figures: null, isProved: false };
  const outcome = { schedule: held.schedule, lowerBound: held.lowerBound, cost: held.cost, stopped: 'time' as const };
  const plan = planFrom(instance.scenario, compiled, outcome, { seed: 1, seconds: run.seconds, version: 'CP-SAT' });
  return { figures: judgedFigures(instance.scenario, plan, 'CP-SAT'), isProved: run.isProved };
}

const agreements: Agreement[] = [];
for (const recipe of recipes(Number(values.count))) {
  const instance = generatedInstance(recipe);
  const own = await ownRow(instance, Number(values.seconds), sourceOf('ovenward'));
  const theirs = await byCpSat(instance, Number(values['cp-seconds']));
  const agreement = {
    scenario: instance.name,
    ownCost: own.cost ?? Number.POSITIVE_INFINITY,
    ownFloor: own.lowerBound,
    ownProved: own.isProved,
    ownSeconds: own.seconds,
    cpCost: theirs.figures?.cost ?? null,
    cpFloor: theirs.figures?.lowerBound ?? 0,
    cpProved: theirs.isProved,
  };
  agreements.push(agreement);
  console.error(
    `${instance.name}  ${verdictOf(agreement)}  ovenward ${own.cost} from ${own.lowerBound}, CP-SAT ${agreement.cpCost}`,
  );
}
writeJson('agreement.json', { machine: thisMachine(), agreements });
const text = agreementText(agreements);
writeSection('agreement', `Measured on ${sayMachine(thisMachine())}.\n\n${text}`);
console.log(text);
process.exit(agreements.length > 0 && agreements.every((agreement) => verdictOf(agreement) === 'agree') ? 0 : 1);
