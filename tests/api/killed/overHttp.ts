// Fetches everything acknowledged from a service that was started again: what is not there, what is not what was acknowledged, and accepted
// plans that do not end. Used by manyRounds.ts and killed.test.ts.
import { z } from 'zod';
import type { Told } from '../../store/killed/acknowledgement.ts';
import { PARTS } from '../../store/killed/wrongIn.ts';
import { asked, askedPlan, seenPlan } from './asking.ts';
import type { Left } from './lookAtCopy.ts';
import { isPlanOf, numberOfPosted, WRITTEN } from './written.ts';

/** Seconds an accepted plan may take to end: many times what all that a life accepts take together. */
const WAIT = 120;
/** Asked at once. */
const AT_ONCE = 8;

export type Look = {
  readonly url: string;
  readonly told: readonly Told[];
  /** What was there before this life. */
  readonly left: Pick<Left, 'ids' | 'costs'>;
  readonly tell: (told: Told) => void;
};

/** `id` is null where none was acknowledged. */
type AskedPlan = { readonly number: number; readonly id: string | null };

type Done<Kind> = Extract<Told, { readonly done: Kind }>;

const postedSchema = z.looseObject({ date: z.string(), scenario: z.unknown(), plan: z.unknown() });
const happenedSchema = z.looseObject({ happened: z.array(z.looseObject({ number: z.number(), event: z.unknown() })) });

async function lostScenario(url: string, { number, name, revision }: Done<'saving'>): Promise<readonly string[]> {
  const text = await asked(`${url}/v1/scenarios/${name}/history/${revision}`);
  const record = { name, revision, savedAt: '', mediaType: 'application/yaml', text } as const;
  return WRITTEN.scenario(record) === number ? [] : ['another text'];
}

async function lostPosting(url: string, { number, date, revision }: Done<'posting'>): Promise<readonly string[]> {
  const text = await asked(`${url}/v1/days/${date}/posted/history/${revision}`);
  return numberOfPosted(postedSchema.parse(JSON.parse(text))) === number ? [] : ['another plan'];
}

async function lostTellings(url: string, date: string, tellings: readonly Done<'telling'>[]): Promise<readonly string[]> {
  const { happened } = happenedSchema.parse(JSON.parse(await asked(`${url}/v1/days/${date}/happened`)));
  const byNumber = new Map(happened.map((each) => [each.number, WRITTEN.event(JSON.stringify(each.event))]));
  return tellings.flatMap(({ number, first }) => {
    const isThere = Array.from({ length: PARTS }, (_, part) => byNumber.get(first + part)).every(
      (event, part) => event?.number === number && event.part === part,
    );
    return isThere ? [] : [`${number}, from ${first}`];
  });
}

/** Asked with its key once more, it is the work that was acknowledged, or that was left though nobody heard of it; and it ends. */
async function wrongPlan({ url, left: { ids, costs }, tell }: Look, { number, id }: AskedPlan): Promise<readonly string[]> {
  const again = await askedPlan(url, number, WAIT);
  if (id === null) tell({ done: 'accepting', number, id: again.id });
  const wanted = id ?? ids.get(number) ?? again.id;
  const work = await seenPlan(url, wanted);
  const wrong = again.id === wanted ? [] : [`its key is that of ${again.id}`];
  if (work.state !== 'done') return [...wrong, `it is ${work.state} after ${WAIT} s`];
  if (!isPlanOf(number, work.answer)) return [...wrong, 'no plan of its day'];
  const best = costs.get(wanted);
  const { cost } = z.looseObject({ score: z.looseObject({ cost: z.number() }) }).parse(work.answer).score;
  return best === undefined || cost <= best ? wrong : [...wrong, `its plan costs ${cost}, the best before the death ${best}`];
}

/** What is not answered is not there. */
async function seen(what: string, look: () => Promise<readonly string[]>): Promise<readonly string[]> {
  try {
    return (await look()).map((fault) => `lost: ${what}: ${fault}`);
  } catch (error) {
    return [`lost: ${what}: ${String(error)}`];
  }
}

async function inTurns(looks: readonly (() => Promise<readonly string[]>)[]): Promise<readonly string[]> {
  const left = [...looks];
  const wrong: string[] = [];
  const one = async (): Promise<void> => {
    for (let look = left.shift(); look !== undefined; look = left.shift()) wrong.push(...(await look()));
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
  return wrong;
}

/** Every plan that was asked for. */
function plansIn(all: readonly Told[]): readonly AskedPlan[] {
  const ids = new Map(all.flatMap((each) => ('done' in each && each.done === 'accepting' ? [[each.number, each.id]] : [])));
  const numbers = all.flatMap((each) => ('doing' in each && each.doing === 'accepting' ? [each.number] : []));
  return numbers.map((number) => ({ number, id: ids.get(number) ?? null }));
}

/** Everything that was told by clients; plans nobody acknowledged are asked for again, and told. */
export async function wrongOverHttp(look: Look): Promise<readonly string[]> {
  const { url, told: all } = look;
  const tellings = all.flatMap((each) => ('done' in each && each.done === 'telling' ? [each] : []));
  const dates = [...new Set(tellings.map(({ date }) => date))];
  const others = all.flatMap((each) => {
    if (!('done' in each)) return [];
    if (each.done === 'saving') return [() => seen(`saving ${each.number}`, () => lostScenario(url, each))];
    return each.done === 'posting' ? [() => seen(`posting ${each.number}`, () => lostPosting(url, each))] : [];
  });
  return inTurns([
    ...plansIn(all).map((plan) => () => seen(`accepting ${plan.number}`, () => wrongPlan(look, plan))),
    ...others,
    ...dates.map((date) => () => {
      const ofDate = tellings.filter((each) => each.date === date);
      return seen(`telling of ${date}`, () => lostTellings(url, date, ofDate));
    }),
  ]);
}
