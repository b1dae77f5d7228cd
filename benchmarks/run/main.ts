// `npm run bench`: the baker's rule, our planner and CP-SAT on the same scenarios, one after another in one run; every plan is
// judged; results go to benchmarks/results.json after each, tables and pictures to docs/benchmarks.md at the end.
import { parseArgs } from 'node:util';
import { cpSatRows } from '../planners/cpSat.ts';
import { type Instance, PLANNERS, type Planner, type Row } from '../planners/instance.ts';
import { ownRow } from '../planners/own.ts';
import { ruleRow } from '../planners/rule.ts';
import { writeMainReport } from '../report/mainReport.ts';
import { contradictionIn, standingsOf } from '../report/standing.ts';
import { chosenInstances } from './instances.ts';
import { sayMachine, thisMachine } from './machine.ts';
import { keyOf, type Results, readResults, withRows, writeResults } from './results.ts';
import { sourceOf } from './sources.ts';

/** Marks at which CP-SAT's one run is looked at, besides its limit, in seconds. */
const CP_SAT_MARKS = [1, 2, 10, 30];

const OPTIONS = {
  mornings: { type: 'boolean', default: false },
  all: { type: 'boolean', default: false },
  only: { type: 'string', default: '' },
  planners: { type: 'string', default: PLANNERS.join(',') },
  seconds: { type: 'string', default: '1,2,10,30' },
  'cp-seconds': { type: 'string', default: '60' },
  'cp-trays': { type: 'string', default: '100' },
  again: { type: 'boolean', default: false },
  fresh: { type: 'boolean', default: false },
  list: { type: 'boolean', default: false },
  report: { type: 'boolean', default: false },
} as const;

const { values } = parseArgs({ options: OPTIONS });
const words = (text: string): string[] => text.split(',').filter((word) => word !== '');
const numbers = (text: string, option: string): number[] =>
  words(text).map((word) => {
    const number = Number(word);
    if (!(number > 0)) throw new Error(`--${option}: "${word}" is not a number above 0`);
    return number;
  });

const ownSeconds = numbers(values.seconds, 'seconds');
const cpSeconds = Math.max(...numbers(values['cp-seconds'], 'cp-seconds'));
const cpMarks = [...CP_SAT_MARKS.filter((mark) => mark < cpSeconds), cpSeconds];
const mostCpTrays = Math.max(...numbers(values['cp-trays'], 'cp-trays'));
const planners = PLANNERS.filter((planner) => words(values.planners).includes(planner));
const unknown = words(values.planners).filter((word) => !PLANNERS.some((planner) => planner === word));
if (unknown.length > 0) throw new Error(`--planners: no planner ${unknown.join(', ')}; there are ${PLANNERS.join(', ')}`);

const machine = thisMachine();
const earlier = values.fresh ? null : readResults();
if (earlier !== null && !values.report && sayMachine(earlier.machine) !== sayMachine(machine))
  throw new Error(`results.json is of another machine (${sayMachine(earlier.machine)}); --fresh begins anew`);
let results: Results = earlier ?? { machine, references: {}, rows: [] };
const sources = new Map(PLANNERS.map((planner) => [planner, sourceOf(planner)]));

function isMeasured(instance: Instance, planner: Planner, limitSeconds: number): boolean {
  const key = keyOf({ set: instance.set, scenario: instance.name, planner, limitSeconds });
  return !values.again && results.rows.some((row) => keyOf(row) === key && row.source === sources.get(planner));
}

function say(row: Row): void {
  const left = row.leftOutTrays > 0 ? `, ${row.leftOutTrays} left out` : '';
  const cost = row.cost === null ? 'no plan' : `${row.cost}${left}, floor ${row.lowerBound}`;
  const limit = row.planner === 'rule' ? '' : ` ${row.limitSeconds} s`;
  console.error(`${row.scenario}  ${row.planner}${limit}  ${cost}  (${row.seconds.toFixed(2)} s)`);
}

function keep(rows: readonly Row[]): void {
  rows.forEach(say);
  results = { ...results, rows: withRows(results.rows, rows) };
  writeResults(results);
}

async function measure(instance: Instance): Promise<void> {
  const source = (planner: Planner): string => sources.get(planner) ?? '';
  if (instance.reference !== null)
    results = { ...results, references: { ...results.references, [instance.name]: instance.reference } };
  if (planners.includes('rule') && !isMeasured(instance, 'rule', 0)) keep([ruleRow(instance, source('rule'))]);
  if (planners.includes('ovenward')) {
    for (const seconds of ownSeconds) {
      if (!isMeasured(instance, 'ovenward', seconds)) keep([await ownRow(instance, seconds, source('ovenward'))]);
    }
  }
  const mayAskCpSat = planners.includes('cp-sat') && instance.trays <= mostCpTrays;
  if (mayAskCpSat && !cpMarks.every((mark) => isMeasured(instance, 'cp-sat', mark)))
    keep(await cpSatRows(instance, cpMarks, source('cp-sat')));
}

/** No floor of anybody may be above a judged plan of anybody. */
function mustAgree(instance: Instance): void {
  const rows = results.rows.filter((row) => row.set === instance.set && row.scenario === instance.name);
  for (const standing of standingsOf(rows)) {
    const contradiction = contradictionIn(standing);
    if (contradiction !== null) throw new Error(contradiction);
  }
}

const choice = { generated: !values.mornings || values.all, mornings: values.mornings || values.all, only: words(values.only) };
if (!values.report) {
  const instances = chosenInstances(choice);
  if (values.list) for (const { set, name, trays } of instances) console.log(`${set}  ${name}  ${trays} trays`);
  else {
    console.error(sayMachine(machine));
    for (const instance of instances) {
      await measure(instance);
      mustAgree(instance);
    }
  }
}
if (!values.list) writeMainReport(results);
