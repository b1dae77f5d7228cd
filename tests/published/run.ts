// `npm run published -- [folder] [--seconds n | --rounds n] [--seed n] [--workers n] [--only text] [--write]`: solves published
// instances, prints for each what was found beside what was published, and which bars hold; with --write also into
// docs/published.md. Not a test: it goes by the clock.
import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { casesOf } from './allCases.ts';
import { BARS, holds } from './bars.ts';
import { ABSENT, FOLDERS, type Folder, isPresent } from './benchFolder.ts';
import { cellsOf, headOf, pageTable, type Row, terminalLine } from './resultTable.ts';
import { attemptInRounds, attemptInSeconds } from './solveCase.ts';

const PAGE = resolve(import.meta.dirname, '../../docs/published.md');

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string' },
    rounds: { type: 'string' },
    seed: { type: 'string', default: '1' },
    workers: { type: 'string', default: '1' },
    only: { type: 'string', default: '' },
    write: { type: 'boolean', default: false },
  },
});

/** Seconds the bars give a folder, and a few where there is no bar. */
const SECONDS: Readonly<Record<Folder, number>> = {
  jobshop: 10,
  flexible: 10,
  flowshop: 2,
  rcpsp: 5,
  'rcpsp-max': 5,
  tardiness: 5,
  osp: 10,
};

function effortOf(folder: Folder): string {
  const { rounds, seed, workers } = values;
  const seconds = values.seconds ?? SECONDS[folder];
  return `${rounds === undefined ? `up to ${seconds} s` : `${rounds} rounds`} each, seed ${seed}, threads: ${workers}`;
}

async function tryAll(folder: Folder): Promise<Row[]> {
  console.log(`\n${folder}: ${effortOf(folder)}\n${terminalLine(headOf(folder))}`);
  const rows: Row[] = [];
  const seed = Number(values.seed);
  const workers = Number(values.workers);
  for (const one of casesOf(folder).filter(({ name }) => name.includes(values.only))) {
    const startedMs = performance.now();
    const tried =
      values.rounds === undefined
        ? await attemptInSeconds(one, Number(values.seconds ?? SECONDS[folder]), seed, workers)
        : await attemptInRounds(one, Number(values.rounds), seed, workers);
    const row = { one, tried, seconds: (performance.now() - startedMs) / 1000 };
    console.log(terminalLine(cellsOf(row)));
    rows.push(row);
  }
  return rows;
}

/** The bars of a folder of which every instance was tried, and whether they hold. */
function barsOf(folder: Folder, rows: readonly Row[]): string[] {
  const byName = new Map(rows.map((row) => [row.one.name, row]));
  return BARS.filter((bar) => bar.folder === folder).flatMap((bar) => {
    const tried = Object.keys(bar.rounds).flatMap((name) => byName.get(name) ?? []);
    if (tried.length < Object.keys(bar.rounds).length) return [];
    const held = tried.filter((row) => holds(bar, row.one, row.tried)).length;
    return [`${held >= bar.atLeast ? 'Holds' : 'MISSED'}: ${bar.says} (${held} of ${tried.length}, ${bar.atLeast} wanted).`];
  });
}

/** Puts a text between the marks of a folder on the page. */
function write(folder: Folder, text: string): void {
  const page = readFileSync(PAGE, 'utf8');
  const [from, to] = [`<!-- ${folder} -->\n`, `<!-- end of ${folder} -->`];
  const start = page.indexOf(from);
  const end = page.indexOf(to);
  if (start < 0 || end < start) throw new Error(`docs/published.md has no place for ${folder}`);
  writeFileSync(PAGE, page.slice(0, start + from.length) + text + page.slice(end));
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
for (const folder of FOLDERS.filter((one) => wanted === undefined || one === wanted)) {
  const rows = await tryAll(folder);
  const bars = barsOf(folder, rows);
  for (const line of bars) console.log(line);
  const said = [`${effortOf(folder)}.`, ...bars].join('\n');
  if (values.write) write(folder, `\n${said[0]?.toUpperCase()}${said.slice(1)}\n\n${pageTable(folder, rows)}\n\n`);
}
// The thread of the linear solver, if one is still at work, is of no use any more.
process.exit(0);
