// Fifty generated days that cannot all be done: every change offered is made and the day planned again. Run by hand: npm run
// would-fit, or npm run would-fit -- FROM COUNT for a part of them. Prints a line a day and the sum.
import { makePlan } from '../../../src/planning.ts';
import { whatWouldFit } from '../../../src/questions/whatWouldFit.ts';
import { scenarioFrom } from '../../laws/anyScenario.ts';
import { askingFor } from '../askingFor.ts';
import { actedOn, patching } from './actedOn.ts';

const MOST_TRAYS = 7;
const LEAST_TRAYS = 2;

const [from = 1, count = 50] = process.argv.slice(2).map(Number);
const now = (): number => performance.now();

let days = 0;
let offered = 0;
let wrong = 0;
for (let seed = from; days < count; seed++) {
  const scenario = scenarioFrom(seed);
  const quick = await makePlan(scenario, { effort: 100, now, version: 'test' });
  const trays = quick.batches.reduce((sum, batch) => sum + batch.trays.length, 0) + quick.score.leftOutTrays;
  if (trays < LEAST_TRAYS || trays > MOST_TRAYS || quick.score.lateTrayMinutes + quick.score.leftOutTrays === 0) continue;
  const startedAtMs = now();
  const plan = await makePlan(scenario, { seed: 1, now, version: 'test' });
  if (plan.score.lateTrayMinutes + plan.score.leftOutTrays === 0) continue;
  days++;
  const kinds: string[] = [];
  for (const answer of await whatWouldFit({ scenario, plan, patch: patching }, askingFor({ now }))) {
    for (const change of answer.changes) {
      const faults = await actedOn(scenario, plan, answer, change);
      offered++;
      if (faults.length > 0) wrong++;
      kinds.push(`${change.kind} ${change.amount}${change.isSmallest ? '!' : ''}`);
      for (const fault of faults) console.log(`  WRONG, ${change.says} ${fault}`);
    }
  }
  const seconds = ((now() - startedAtMs) / 1000).toFixed(0);
  console.log(
    `day ${seed}: ${trays} trays, ${plan.score.leftOutTrays} left out, ${plan.score.lateTrayMinutes} min late; ${kinds.join(', ') || 'nothing offered'}; ${seconds} s`,
  );
}
console.log(`${days} days, ${offered} changes offered, ${offered - wrong} of ${offered} do what they say.`);
process.exitCode = wrong === 0 ? 0 : 1;
