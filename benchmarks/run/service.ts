// `npm run bench:service`: the built service under many clients that post days of 30 trays. What it answers, whether every accepted plan keeps
// the rules, how soon it answers others meanwhile, what memory it holds, and what HTTP adds to a plan.
import { parseArgs } from 'node:util';
import { table } from '../report/markdown.ts';
import { generateScenario } from '../scenarios/generateScenario.ts';
import { KINDS } from '../scenarios/kinds.ts';
import { wrongPlans } from '../service/acceptedPlans.ts';
import { firstPlans, median } from '../service/firstPlan.ts';
import { percentile, sampling } from '../service/sampling.ts';
import { startLoad } from '../service/startLoad.ts';
import { startService } from '../service/startService.ts';
import { sayMachine, thisMachine } from './machine.ts';

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    clients: { type: 'string', default: '64' },
    trays: { type: 'string', default: '30' },
    effort: { type: 'string', default: '1' },
    /** Requests a second of each client; 0: without a pause, whatever Retry-After says. */
    rate: { type: 'string', default: '1' },
    wait: { type: 'string', default: '2' },
    pause: { type: 'string', default: '20' },
    rounds: { type: 'string', default: '15' },
  },
});
const [seconds, clients, trays, effort] = [values.seconds, values.clients, values.trays, values.effort].map(Number);
if (seconds === undefined || clients === undefined || trays === undefined || effort === undefined) throw new Error('no numbers');
const DAYS = 24;

const later = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const ms = (value: number): string => (Number.isFinite(value) ? `${value.toFixed(value < 10 ? 1 : 0)} ms` : 'over the wait');
const scenarios = Array.from({ length: DAYS }, (_, day) =>
  generateScenario({ kind: KINDS[day % KINDS.length] ?? 'plain', trays, seed: 1 + Math.floor(day / KINDS.length) }),
);

const service = await startService();
const { url } = service;

let unwell = 0;

async function healthMs(): Promise<number> {
  const began = performance.now();
  const answer = await fetch(`${url}/healthz`);
  await answer.text();
  if (answer.status !== 200) unwell += 1;
  return performance.now() - began;
}

const [plain] = scenarios;
if (plain === undefined) throw new Error('no day');
const first = await firstPlans(url, plain, effort, Number(values.rounds));
const [beforeMb] = [service.residentMb(), await service.loopDelayMs()];
const [endHealth, endLoop, endMemory] = [
  sampling(200, healthMs),
  sampling(5000, service.loopDelayMs),
  sampling(1000, async () => service.residentMb()),
];
const load = await startLoad({
  url,
  path: `/v1/plans?effort=${effort}`,
  bodies: scenarios.map((scenario) => JSON.stringify(scenario)),
  clients,
  seconds,
  perSecond: Number(values.rate),
  wait: Number(values.wait),
});
const atEndMb = service.residentMb();
const [health, loop, memory] = [await endHealth(), await endLoop(), await endMemory()];
const accepted = load.accepted.flatMap(({ location, body }) => {
  const scenario = scenarios[body];
  return scenario === undefined ? [] : [{ location, scenario }];
});
const wrong = await wrongPlans(url, accepted);
await later(1000 * Number(values.pause));
const afterMb = service.residentMb();
const log = service.log();
const code = await service.stop();

const [http, call] = [median(first.overHttpMs), median(first.byCallMs)];
const statuses = Object.entries(load.statuses).map(([status, times]) => `${times} × ${status}`);
console.log(
  `Measured on ${sayMachine(thisMachine())}. ${clients} clients for ${seconds} s, days of ${trays} trays, effort ${effort}.\n`,
);
console.log(
  table(
    ['what', 'measured'],
    [
      ['answers', statuses.join(', ')],
      ['connections broken, timed out', `${load.errors}, ${load.timeouts}`],
      ['503 without Retry-After', `${load.refusedWithoutTime}`],
      ['accepted plans, of them wrong', `${accepted.length}, ${wrong.length}`],
      ['plans a second', (accepted.length / load.seconds).toFixed(1)],
      [`/healthz, ${health.length} times: p50`, ms(percentile(health, 0.5))],
      ['/healthz p99; not well', `${ms(percentile(health, 0.99))}; ${unwell} times`],
      ['event loop delay p99, median and worst of the looks every 5 s', `${ms(median(loop))}, ${ms(Math.max(...loop))}`],
      [
        'memory before, most, at the end',
        `${[beforeMb, Math.max(...memory), atEndMb].map((mb) => `${mb.toFixed(0)} MB`).join(', ')}`,
      ],
      [`memory ${values.pause} s later`, `${afterMb.toFixed(0)} MB`],
      ['first plan over HTTP: first, median', `${ms(first.overHttpMs[0] ?? Number.NaN)}, ${ms(http)}`],
      ['the same by a call: first, median', `${ms(first.byCallMs[0] ?? Number.NaN)}, ${ms(call)}`],
      ['HTTP beside a call', `× ${(http / call).toFixed(2)}, ${ms(http - call)} more`],
      ['lines of the log from warn on; exit code', `${log.split('\n').filter((line) => line !== '').length}; ${code}`],
    ],
  ),
);
for (const each of wrong.slice(0, 20)) console.error(each);
const faults = Object.keys(load.statuses).filter((status) => status.startsWith('5') && status !== '503');
if (wrong.length > 0 || faults.length > 0 || load.refusedWithoutTime > 0 || code !== 0) {
  console.error(log.split('\n').slice(0, 20).join('\n'));
  process.exit(1);
}
