// `npm run bench:growth`: seconds and memory of a whole process until the first plan with every tray is in hand, judged, from 30
// to 500 trays, and by how much the seconds grow with each doubling.
import { parseArgs } from 'node:util';
import { judgedFigures } from '../planners/judged.ts';
import { runOwn } from '../planners/own.ts';
import { table } from '../report/markdown.ts';
import { writeSection } from '../report/section.ts';
import { generatedInstance } from './instances.ts';
import { sayMachine, thisMachine } from './machine.ts';
import { writeJson } from './results.ts';

const { values } = parseArgs({
  options: {
    trays: { type: 'string', default: '30,60,125,250,500' },
    seeds: { type: 'string', default: '1,2,3' },
    seconds: { type: 'string', default: '60' },
  },
});
const list = (text: string): number[] => text.split(',').map(Number);
const median = (all: readonly number[]): number => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;

type Run = { readonly trays: number; readonly seed: number; readonly seconds: number | null; readonly peakMb: number };

/** One run; seconds null: there was no complete plan within the limit. */
async function measure(trays: number, seed: number, limit: number): Promise<Run> {
  const instance = generatedInstance({ kind: 'plain', trays, seed });
  const run = await runOwn(instance, ['--seconds', String(limit), '--until-complete'], limit);
  const { leftOutTrays } = judgedFigures(instance.scenario, run.plan, 'ovenward');
  return { trays, seed, seconds: leftOutTrays === 0 ? run.wallSeconds : null, peakMb: run.peakMb };
}

const runs: Run[] = [];
for (const trays of list(values.trays)) {
  for (const seed of list(values.seeds)) {
    const run = await measure(trays, seed, Number(values.seconds));
    runs.push(run);
    console.error(
      `${trays} trays, seed ${seed}: ${run.seconds?.toFixed(2) ?? 'none within the limit'} s, ${run.peakMb.toFixed(0)} MB`,
    );
  }
}
writeJson('growth.json', { machine: thisMachine(), runs });

const sizes = list(values.trays).map((trays) => {
  const mine = runs.filter((run) => run.trays === trays);
  return {
    trays,
    complete: mine.filter((run) => run.seconds !== null).length,
    of: mine.length,
    seconds: median(mine.map((run) => run.seconds ?? Number.POSITIVE_INFINITY)),
    peakMb: Math.max(...mine.map((run) => run.peakMb)),
  };
});
const rows = sizes.map((size, i) => {
  const before = sizes[i - 1];
  const factor = before === undefined ? null : (size.seconds / before.seconds) ** (1 / Math.log2(size.trays / before.trays));
  const grows = factor === null || !Number.isFinite(factor) ? '' : `× ${factor.toFixed(2)}`;
  const seconds = Number.isFinite(size.seconds) ? size.seconds.toFixed(2) : `more than ${values.seconds}`;
  return [`${size.trays}`, `${size.complete} of ${size.of}`, seconds, grows, size.peakMb.toFixed(0)];
});
const head = ['trays', 'complete', 'seconds, median', 'per doubling', 'most memory, MB'];
const text = `Measured on ${sayMachine(thisMachine())}.\n\n${table(head, rows, 0)}`;
writeSection('growth', text);
console.log(text);
