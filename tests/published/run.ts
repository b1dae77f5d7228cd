// `npm run published -- [folder] [--seconds n] [--rounds n] [--seed n] [--only text]`: solves published instances and prints, for
// each, what was found beside what was published, and which bars hold. Not a test: it goes by the clock.
import { parseArgs } from 'node:util';
import { casesOf } from './allCases.ts';
import { BARS, holds } from './bars.ts';
import { ABSENT, FOLDERS, type Folder, isPresent } from './benchFolder.ts';
import type { PublishedCase } from './publishedCase.ts';
import { type Attempt, attemptInRounds, attemptInSeconds } from './solveCase.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string' },
    rounds: { type: 'string' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string', default: '' },
  },
});

/** Seconds the bars give a folder. */
const SECONDS: Readonly<Record<Folder, number>> = {
  jobshop: 10,
  flexible: 10,
  flowshop: 2,
  rcpsp: 5,
  'rcpsp-max': 5,
  tardiness: 5,
  osp: 10,
};

const WIDTHS = [24, 10, 10, 10, 8, 8] as const;

function row(cells: readonly string[]): string {
  return cells.map((cell, i) => (i === 0 ? cell.padEnd(WIDTHS[0]) : cell.padStart(WIDTHS[i] ?? 0))).join('  ');
}

const short = (value: number): string => (Number.isInteger(value) ? String(value) : value.toFixed(4));

function verdict(one: PublishedCase, tried: Attempt): string {
  if (tried.faults.length > 0) return `WRONG: ${tried.faults.slice(0, 3).join('; ')}`;
  if (tried.found === 'none') return tried.isProved ? 'none exists, proved' : 'none found';
  const { best } = one.published;
  const equals = best !== null && Math.abs(tried.found.value - best) < 1e-9;
  return [tried.isProved ? 'proved' : '', equals ? 'equal' : ''].filter((word) => word !== '').join(', ');
}

function gapOf(one: PublishedCase, tried: Attempt): string {
  const { best } = one.published;
  if (best === null || best === 0 || tried.found === 'none') return '';
  return `${(100 * (tried.found.value / best - 1)).toFixed(2)} %`;
}

function detailsOf(one: PublishedCase, tried: Attempt): string {
  if (tried.found === 'none' || tried.found.details === undefined) return '';
  const printed = one.published.details ?? {};
  return Object.entries(tried.found.details)
    .map(([name, value]) => `${name} ${short(value)}${printed[name] === undefined ? '' : ` (${short(printed[name])})`}`)
    .join('  ');
}

async function tryAll(folder: Folder): Promise<Map<string, Attempt>> {
  const seed = Number(values.seed);
  const seconds = Number(values.seconds ?? SECONDS[folder]);
  console.log(`\n${folder}: ${values.rounds === undefined ? `${seconds} s each` : `${values.rounds} rounds each`}, seed ${seed}`);
  console.log(row(['instance', 'found', 'bound', 'published', 'above', 'seconds']));
  const attempts = new Map<string, Attempt>();
  for (const one of casesOf(folder).filter(({ name }) => name.includes(values.only))) {
    const startedMs = performance.now();
    const tried =
      values.rounds === undefined
        ? await attemptInSeconds(one, seconds, seed)
        : await attemptInRounds(one, Number(values.rounds), seed);
    const took = ((performance.now() - startedMs) / 1000).toFixed(2);
    const found = tried.found === 'none' ? '-' : short(tried.found.value);
    const bound = tried.bound === null ? '-' : short(tried.bound);
    const published = one.published.best === null ? '-' : short(one.published.best);
    const end = [verdict(one, tried), detailsOf(one, tried)].filter((text) => text !== '').join('  ');
    console.log(`${row([one.name, found, bound, published, gapOf(one, tried), took])}  ${end}`);
    attempts.set(one.name, tried);
  }
  return attempts;
}

function sayBars(folder: Folder, attempts: ReadonlyMap<string, Attempt>): void {
  const cases = new Map(casesOf(folder).map((one) => [one.name, one]));
  for (const bar of BARS.filter((one) => one.folder === folder)) {
    const names = Object.keys(bar.rounds).filter((name) => attempts.has(name));
    if (names.length < Object.keys(bar.rounds).length) continue;
    const held = names.filter((name) => holds(bar, cases.get(name) as PublishedCase, attempts.get(name) as Attempt)).length;
    console.log(`${held >= bar.atLeast ? 'holds ' : 'MISSED'} ${bar.says}: ${held} of ${names.length}, ${bar.atLeast} wanted`);
  }
}

const [wanted] = positionals;
if (!isPresent) {
  console.error(ABSENT);
  process.exit(1);
}
if (wanted !== undefined && !FOLDERS.some((folder) => folder === wanted)) {
  console.error(`no folder ${wanted}; there are ${FOLDERS.join(', ')}`);
  process.exit(2);
}
for (const folder of FOLDERS.filter((one) => wanted === undefined || one === wanted)) sayBars(folder, await tryAll(folder));
// The thread of the linear solver, if one is still at work, is of no use any more.
process.exit(0);
