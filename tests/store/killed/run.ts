// Two hundred writers killed at moments all over their lives. Run by hand: npm run killed, or npm run killed -- COUNT. Prints a line
// a round and the sum.
import { manyRounds } from './manyRounds.ts';

const [count = 200] = process.argv.slice(2).map(Number);
const { rounds, acknowledged, wrong, during } = await manyRounds(count, (line) => console.log(line));
for (const fault of wrong) console.log(`  WRONG, ${fault}`);
const moments = Object.entries(during).map(([what, times]) => `${what} ${times}`);
console.log(`Killed while: ${moments.join(', ')}.`);
console.log(`${rounds} rounds, ${acknowledged} acknowledgements, ${wrong.length} of them lost or anything torn.`);
process.exitCode = wrong.length === 0 ? 0 : 1;
