// `npm run bench:upsets`: generated mornings upset at a minute in their midst and planned anew. How soon there is an answer, and its
// price beside that of planning the rest of the day from nothing in the same time.
import { parseArgs } from 'node:util';
import { judge } from '../../src/check/judge.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { makePlan } from '../../src/planning.ts';
import type { Asking } from '../../src/questions/asking.ts';
import { replan } from '../../src/questions/replan.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import { generateScenario } from '../scenarios/generateScenario.ts';
import { KINDS } from '../scenarios/kinds.ts';
import { upsetOf } from '../scenarios/upsetOf.ts';
import { sayMachine, thisMachine } from './machine.ts';

const { values } = parseArgs({
  options: { count: { type: 'string', default: '50' }, seconds: { type: 'string', default: '2' } },
});
const limit = Number(values.seconds);
const count = Number(values.count);
if (!(count >= 1 && limit > 0)) throw new RangeError('--count and --seconds take numbers above 0');
/** Of the mornings drawn, at least one in so many is upset. */
const MOST_DRAWN = 20;
const now = (): number => performance.now();
const version = 'benchmark';

function asking(seconds: number): Asking {
  const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
  return { seed: 1, workers: 2, now, untilMs: now() + 1000 * seconds, cancelled: () => false, pause, version };
}

function faultsOf(scenario: Scenario) {
  const reading = readScenarioValue(JSON.parse(JSON.stringify(scenario)));
  return reading.ok ? [] : reading.errors;
}

type Result = { readonly firstSeconds: number; readonly cost: number; readonly moves: number; readonly scratch: number };

/** Null: nothing happened, or what was drawn cannot be. */
async function measure(seed: number): Promise<Result | null> {
  const kind = KINDS[seed % KINDS.length] ?? 'plain';
  const scenario = generateScenario({ kind, trays: 8 + ((seed * 7) % 25), seed });
  const plan = await makePlan(scenario, { now, seconds: limit, workers: 2, version });
  const upset = upsetOf(scenario, plan, seed);
  if (upset.happened.happened.length === 0) return null;
  const at = { ...upset, faultsOf };
  const began = now();
  const first = await replan(scenario, plan, at, asking(1));
  const firstSeconds = (now() - began) / 1000;
  const outcome = await replan(scenario, plan, at, asking(limit));
  if (!first.ok || !outcome.ok) return null;
  const { answer } = outcome;
  for (const each of [first.answer, answer]) {
    const { breaches } = judge(each.scenario, each.plan);
    if (breaches.length > 0) throw new Error(`${kind}, seed ${seed}: ${breaches.map(({ says }) => says).join(' ')}`);
  }
  const scratch = await makePlan(answer.scenario, { now, seconds: limit, workers: 2, version });
  const result = { firstSeconds, cost: answer.plan.score.cost, moves: answer.movesCost, scratch: scratch.score.cost };
  console.error(
    `${kind}, seed ${seed}: an answer after ${firstSeconds.toFixed(2)} s; ${result.cost} (moves ${result.moves}), from nothing ${result.scratch}`,
  );
  return result;
}

const results: Result[] = [];
for (let seed = 1; results.length < count; seed++) {
  if (seed > MOST_DRAWN * count) throw new Error(`only ${results.length} of ${seed - 1} mornings drawn were upset`);
  const result = await measure(seed);
  if (result !== null) results.push(result);
}
const slowest = Math.max(...results.map(({ firstSeconds }) => firstSeconds));
const within = results.filter(({ cost, moves, scratch }) => cost <= scratch + moves + 1e-6).length;
const cheaper = results.filter(({ cost, scratch }) => cost <= scratch + 1e-6).length;
console.log(`Measured on ${sayMachine(thisMachine())}.`);
console.log(
  `${results.length} upsets, every plan approved by the judge; with a limit of 1 s the slowest answer came after ${slowest.toFixed(2)} s.`,
);
console.log(
  `In ${limit} s: ${cheaper} cost no more than the rest planned from nothing, ${within} no more than that and the price of their moves.`,
);
