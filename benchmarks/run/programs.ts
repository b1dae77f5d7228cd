// `npm run bench:programs`: HiGHS and javascript-lp-solver on the same generated integer programs. Ends with exit code 1 when an
// optimum differs.
import { parseArgs } from 'node:util';
import loadHighs from 'highs';
import { primalModel } from '../../src/solver/bounds/linearProgram.ts';
import { solveLinear } from '../../src/solver/bounds/linearSolver.ts';
import { generateProgram } from '../programs/generateProgram.ts';
import { lpText } from '../programs/lpText.ts';
import { writeSection } from '../report/section.ts';
import { diceOf } from '../scenarios/chance.ts';

const { values } = parseArgs({ options: { count: { type: 'string', default: '100' }, seed: { type: 'string', default: '1' } } });
const TOLERANCE = 1e-6;
const LIMIT_MS = 10_000;

const highs = await loadHighs();
const dice = diceOf(Number(values.seed));
const count = Number(values.count);
const differing: string[] = [];
let unanswered = 0;
for (let i = 0; i < count; i++) {
  const program = generateProgram(dice);
  const theirs = highs.solve(lpText(program));
  if (theirs.Status !== 'Optimal') throw new Error(`program ${i}: HiGHS says ${theirs.Status}`);
  const ours = await solveLinear(primalModel(program, true), LIMIT_MS);
  if (ours === null) unanswered++;
  else if (!ours.feasible || Math.abs(ours.result - theirs.ObjectiveValue) > TOLERANCE * Math.max(1, theirs.ObjectiveValue))
    differing.push(`program ${i}: ${ours.feasible ? ours.result : 'infeasible'} and ${theirs.ObjectiveValue}`);
}
const agreed = count - unanswered - differing.length;
const text = `Of ${count} programs, the optimum is the same on ${agreed}, differs on ${differing.length}; javascript-lp-solver gave no answer in ten seconds on ${unanswered}.`;
writeSection('programs', text);
for (const line of differing) console.error(line);
console.log(text);
process.exit(agreed === count ? 0 : 1);
