// Two hundred times the service killed while clients write. Run by hand: npm run killed:service, or npm run killed:service -- COUNT SEED.
// Prints a line a round and the sum; ends with 1 when something was wrong.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installedIn } from './installed.ts';
import { manyRounds } from './manyRounds.ts';

const [count = 200, seed = 1] = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), 'killed-service-'));
const startedAtMs = performance.now();
const asked = {
  program: installedIn(folder),
  file: join(folder, 'service.db'),
  count,
  seed,
  say: (line: string) => console.log(line),
};
const { wrong, told, during } = await manyRounds(asked);
const seconds = (performance.now() - startedAtMs) / 1000;
rmSync(folder, { recursive: true });

const acknowledged = new Map<string, number>();
for (const each of told) if ('done' in each) acknowledged.set(each.done, (acknowledged.get(each.done) ?? 0) + 1);
const list = (counts: Iterable<readonly [string, number]>): string =>
  [...counts].map(([what, times]) => `${what} ${times}`).join(', ');
for (const fault of wrong) console.log(`  WRONG, ${fault}`);
console.log(`Under way when it was killed: ${list(Object.entries(during))}.`);
console.log(`Acknowledged: ${list(acknowledged)}.`);
const sum = [...acknowledged.values()].reduce((all, times) => all + times, 0);
console.log(`${count} rounds, seed ${seed}, ${seconds.toFixed(0)} s; ${sum} acknowledgements, ${wrong.length} faults found.`);
process.exitCode = wrong.length === 0 ? 0 : 1;
