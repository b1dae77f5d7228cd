// A service that is killed while clients write, started again on the same store, looked after, and so on. Used by run.ts and killed.test.ts.
import { setTimeout } from 'node:timers/promises';
import type { Plan } from '../../../src/model/plan.ts';
import { type Random, randomOf } from '../../../src/solver/random.ts';
import type { Told } from '../../store/killed/acknowledgement.ts';
import { writing } from './clients.ts';
import { bunPlans } from './days.ts';
import { type Left, lookAtCopy } from './lookAtCopy.ts';
import { nextWrite } from './nextWrite.ts';
import { wrongOverHttp } from './overHttp.ts';
import { killedStarting, type ServiceLife, serviceLife } from './serviceLife.ts';

/** From the acknowledgement a death waits for until it comes, in milliseconds: at least, and less than. */
const LEAST_MS = 50;
const MOST_MS = 800;
/** Of so many rounds the third has a life more, which is killed while it starts. */
const STARTS_EVERY = 5;
const STARTING = 3;
/** The first numbers of neighbouring seeds are much alike. */
const PASSED_OVER = 16;

export type RoundsAsked = {
  /** The command, and the store of all rounds. */
  readonly program: string;
  readonly file: string;
  readonly count: number;
  readonly seed: number;
  readonly say: (line: string) => void;
};

export type Rounds = {
  readonly wrong: readonly string[];
  /** Everything clients told. */
  readonly told: readonly Told[];
  /** How often something was under way when the service was killed; several at once are counted each. */
  readonly during: Readonly<Record<string, number>>;
};

/** What goes from round to round. */
type Going = {
  readonly asked: RoundsAsked;
  readonly random: Random;
  readonly planOf: (number: number) => Plan;
  readonly wrong: string[];
  readonly told: Told[];
  readonly during: Record<string, number>;
  number: number;
  left: Left;
  /** How many of `told` were looked at in a service started after them. */
  seen: number;
  /** How long the last life took until it answered, in milliseconds. */
  startMs: number;
};

function underWay(told: readonly Told[]): readonly string[] {
  const ended = new Set(told.flatMap((each) => ('done' in each ? [`${each.done} ${each.number}`] : [])));
  return told.flatMap((each) => ('doing' in each && !ended.has(`${each.doing} ${each.number}`) ? [each.doing] : []));
}

function count(going: Going, during: readonly string[]): void {
  for (const what of during.length === 0 ? ['nothing'] : during) going.during[what] = (going.during[what] ?? 0) + 1;
}

function logged(lines: readonly string[]): readonly string[] {
  return lines.map((line) => `the log: ${line.slice(0, 2000)}`);
}

/**
 * So many milliseconds after something was acknowledged in this life. After a posting, at the next write to the store: the first drawing of
 * a life takes longer than all the others together, and those are to be met too.
 */
type Death = { readonly after: 'anything' | 'posting'; readonly ms: number };

function chance(seed: number): Random {
  const random = randomOf(seed);
  for (let number = 0; number < PASSED_OVER; number++) random.next();
  return random;
}

/** Clients write from here on, until it is killed. */
async function written(going: Going, life: ServiceLife, { after, ms }: Death): Promise<readonly string[]> {
  let isDead = false;
  let acknowledged = () => {};
  const first = new Promise<void>((resolve) => {
    acknowledged = resolve;
  });
  const all = writing({
    url: life.url,
    next: () => going.number++,
    planOf: going.planOf,
    isDead: () => isDead,
    tell: (told) => {
      going.told.push(told);
      if ('done' in told && (after === 'anything' || told.done === after)) acknowledged();
    },
  });
  await Promise.race([first, all]);
  await setTimeout(ms);
  if (after === 'posting') await nextWrite(going.asked.file);
  isDead = true;
  await life.kill();
  return [...(await all), ...logged(life.said())];
}

/** Started on what the death before left, looked after, written to, killed, and what it left looked at. */
async function oneRound(going: Going, death: Death): Promise<readonly string[]> {
  const { program, file } = going.asked;
  const life = await serviceLife(program, file);
  going.startMs = life.startMs;
  const { left } = going;
  const tell = (told: Told) => void going.told.push(told);
  const lost = await wrongOverHttp({ url: life.url, told: going.told.slice(going.seen), left, tell });
  going.seen = going.told.length;
  const wrong = await written(going, life, death);
  count(going, underWay(going.told.slice(going.seen)));
  going.left = await lookAtCopy(file, going.told);
  return [...lost, ...wrong, ...going.left.wrong];
}

async function oneStart(going: Going): Promise<readonly string[]> {
  const { program, file } = going.asked;
  const ms = going.random.below(going.startMs);
  const said = await killedStarting(program, file, ms);
  count(going, ['starting']);
  going.left = await lookAtCopy(file, going.told);
  return [...logged(said), ...going.left.wrong];
}

/** Once more everything of all rounds, and a clean stop. */
async function lastLife(going: Going): Promise<readonly string[]> {
  const { program, file } = going.asked;
  const life = await serviceLife(program, file);
  const { told, left } = going;
  const lost = await wrongOverHttp({ url: life.url, told, left, tell: (each) => void told.push(each) });
  const said = logged(life.said());
  const code = await life.stop();
  const { wrong } = await lookAtCopy(file, told);
  return [...lost, ...said, ...(code === 0 ? [] : [`asked to stop it ends with ${code}`]), ...wrong];
}

export async function manyRounds(asked: RoundsAsked): Promise<Rounds> {
  const going: Going = {
    asked,
    random: chance(asked.seed),
    planOf: await bunPlans(),
    wrong: [],
    told: [],
    during: {},
    number: 0,
    left: { wrong: [], ids: new Map(), costs: new Map() },
    seen: 0,
    startMs: 0,
  };
  const known = new Set<string>();
  // What is lost or torn stays so, and is found in every round after.
  const hear = (what: string, faults: readonly string[]): void => {
    const wrong = faults.filter((fault) => !known.has(fault));
    for (const fault of wrong) known.add(fault);
    going.wrong.push(...wrong.map((fault) => `${what}: ${fault}`));
    asked.say(`${what}, ${wrong.length} wrong`);
  };
  for (let round = 1; round <= asked.count; round++) {
    if (round % STARTS_EVERY === STARTING) hear(`round ${round}: killed while it started`, await oneStart(going));
    const ms = LEAST_MS + going.random.below(MOST_MS - LEAST_MS);
    const after = round % 2 === 0 ? 'posting' : 'anything';
    const before = going.told.length;
    const wrong = await oneRound(going, { after, ms });
    const done = going.told.slice(before).filter((each) => 'done' in each).length;
    hear(`round ${round}: killed ${ms} ms after the first acknowledgement of ${after}, ${done} acknowledged`, wrong);
  }
  hear('after all: everything looked at once more', await lastLife(going));
  return { wrong: going.wrong, told: going.told, during: going.during };
}
