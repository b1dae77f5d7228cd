// Writes what the main benchmark found into docs/benchmarks.md and its pictures. Used by run/main.ts.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { root } from '../planners/childProcess.ts';
import { type Planner, type Row, SETS } from '../planners/instance.ts';
import { sayMachine } from '../run/machine.ts';
import type { Results } from '../run/results.ts';
import { curvesOf } from './curves.ts';
import { plot } from './plot.ts';
import { writeSection } from './section.ts';
import { entrantsOf, NAMES } from './standing.ts';
import { bandTable, dearerThan, scenarioTable } from './tables.ts';

/** Trays from which scenarios are in the picture: below, everybody is done at once. */
const PICTURED_FROM = 16;

const TITLES = { generated: 'Generated scenarios', mornings: 'Mornings with references' } as const;
const PICTURES = { generated: 'docs/pictures/benchmarks.svg', mornings: 'docs/pictures/benchmarks-mornings.svg' } as const;

/** Rows of several states of the code are told apart, not hidden. */
function statesOf(rows: readonly Row[]): string[] {
  const planners: readonly Planner[] = ['ovenward', 'cp-sat', 'rule'];
  return planners.flatMap((planner) => {
    const states = new Set(rows.filter((row) => row.planner === planner).map((row) => row.source));
    return states.size > 1 ? [`Rows of ${planner} come from ${states.size} states of its code.`] : [];
  });
}

/** How much of the machine each planner had: a busy machine makes a poor benchmark, and should be seen to. */
function coresOf(rows: readonly Row[]): string[] {
  const planners = ['ovenward', 'cp-sat'] as const;
  const shares = planners.flatMap((planner) => {
    const cores = rows
      .flatMap((row) => (row.planner === planner && row.seconds >= 1 ? (row.cores ?? []) : []))
      .sort((a, b) => a - b);
    const middle = cores[Math.floor(cores.length / 2)];
    return middle === undefined ? [] : [`${NAMES[planner]} ${middle.toFixed(1)}`];
  });
  return shares.length === 0 ? [] : [`Processors at work while they searched, median: ${shares.join(', ')}.`];
}

/** Seconds a process may end after its limit before it is named: a process has to be started and ended, too. */
const SPARE_SECONDS = 0.25;

function overrunsOf(rows: readonly Row[]): string[] {
  const late = rows.filter(
    ({ planner, seconds, limitSeconds }) => planner === 'ovenward' && seconds > limitSeconds + SPARE_SECONDS,
  );
  const names = late.map(({ scenario, seconds, limitSeconds }) => `${scenario} ${seconds.toFixed(1)} of ${limitSeconds} s`);
  return late.length === 0 ? [] : [`Processes of ovenward that outlasted their limit: ${names.join(', ')}.`];
}

function sideBySide(rows: readonly Row[]): string[] {
  const limits = entrantsOf(rows);
  const ours = limits.filter(({ planner }) => planner === 'ovenward');
  const theirs = limits.filter(({ planner }) => planner === 'cp-sat').slice(-1);
  return ours.flatMap((entrant) => theirs.flatMap((other) => dearerThan(rows, entrant, other) ?? []));
}

function picture(set: keyof typeof PICTURES, rows: readonly Row[]): string[] {
  const curves = curvesOf(rows, PICTURED_FROM);
  if (curves === null) return [];
  const file = join(root, PICTURES[set]);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, plot(curves, TITLES[set]));
  return [`![${TITLES[set]}: gap against seconds](${PICTURES[set].replace(/^docs\//, '')})`];
}

function sectionOf(set: keyof typeof PICTURES, { rows: all, machine, references }: Results): string {
  const rows = all.filter((row) => row.set === set);
  if (rows.length === 0) return 'Not measured yet.';
  const known = set === 'mornings' ? references : {};
  const said = [...statesOf(rows), ...coresOf(rows), ...overrunsOf(rows), ...sideBySide(rows)].map((sentence) => `- ${sentence}`);
  const parts = [
    `Measured on ${sayMachine(machine)}.`,
    said.join('\n'),
    ...picture(set, rows),
    bandTable(rows, known),
    scenarioTable(rows, known),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

export function writeMainReport(results: Results): void {
  for (const set of SETS) writeSection(set, sectionOf(set, results));
}
