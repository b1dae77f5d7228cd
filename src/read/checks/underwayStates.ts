// NOW_OUTSIDE_DAY, STEP_UPSIDE_DOWN, STATE_AND_NOW, STATES_OUT_OF_ORDER: now lies inside the day; what has ended did so by now, what
// has begun did so by now; along a batch and its trays steps are ended, then at most one begun, then planned.
import type { UnderwayTask } from '../../model/underway.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Entry, Parts } from '../parts.ts';
import { amount } from '../shown.ts';
import { allChains, type BatchChains, type Chain, type ChainStep, underwayChains } from './underwayChains.ts';

const RANK = { ended: 2, begun: 1, planned: 0 };

/** When a step began, or was to: a bake with its loading. A load goes in together only as its longest, so that may be longer. */
function latestBegin({ step }: ChainStep, { start, place }: UnderwayTask, togetherMinutes: ReadonlyMap<string, number>): number {
  if (step.do !== 'bake') return start;
  return start - Math.max(step.load, togetherMinutes.get(place?.id ?? '') ?? 0);
}

function stateError(now: number, { at, value }: Entry<UnderwayTask>, begins: number, what: string): CodedError | undefined {
  const { state, start, end, keeps } = value;
  const wrong = (path: string, says: string, doThis: string) => inputErrorAt('STATE_AND_NOW', `${at}/${path}`, says, doThis);
  if (state === 'ended' && end > now) {
    const says = `${what} is said to have ended at minute ${end}, after now, minute ${now}.`;
    return wrong('end', says, 'Write when it ended, or that it has begun.');
  }
  if (state === 'begun' && begins > now) {
    const says = `${what} is said to have begun at minute ${begins}, after now, minute ${now}.`;
    return wrong('start', says, 'Write when it began, or that it is planned.');
  }
  if (state === 'planned' && keeps.includes('time') && begins < now) {
    const says = `${what} has not begun and is to keep its time, minute ${start}, which it can no longer.`;
    return wrong('start', says, 'Let it go at another time, or write that it has begun.');
  }
  return undefined;
}

function chainErrors(now: number, chain: Chain, togetherMinutes: ReadonlyMap<string, number>): readonly CodedError[] {
  return chain.steps.flatMap((step, index) => {
    const entry = step.told[0];
    if (entry === undefined) return [];
    const what = `The ${step.step.do} of ${chain.name}`;
    const error = stateError(now, entry, latestBegin(step, entry.value, togetherMinutes), what);
    const before = chain.steps[index - 1];
    const order = before === undefined ? undefined : orderError(entry, what, before, chain.name);
    return [error, order].filter((each) => each !== undefined);
  });
}

/** A step that is further along than it can be, as the one before it has not ended. */
function orderError(
  { at, value }: Entry<UnderwayTask>,
  what: string,
  before: ChainStep,
  beforeName: string,
): CodedError | undefined {
  const last = before.told[0]?.value;
  if (last === undefined || value.state === 'planned' || RANK[last.state] === RANK.ended) return undefined;
  const says = `${what} has ${value.state}, and the ${before.step.do} of ${beforeName} before it has not ended.`;
  return inputErrorAt('STATES_OUT_OF_ORDER', `${at}/state`, says, 'Write how far each of the two is.');
}

/** From a batch to the first step of each of its trays. */
function betweenErrors({ batch, trays }: BatchChains): readonly CodedError[] {
  const last = batch?.steps.at(-1);
  if (batch === undefined || last === undefined) return [];
  return trays.flatMap(({ name, steps }) => {
    const [first] = steps;
    const entry = first?.told[0];
    if (first === undefined || entry === undefined) return [];
    return orderError(entry, `The ${first.step.do} of ${name}`, last, batch.name) ?? [];
  });
}

/** Longest loading of any bake, for each deck loaded together. */
function togetherLoads({ ovens, products }: Parts): ReadonlyMap<string, number> {
  const loads = products.sound.flatMap(({ value }) => value.steps.flatMap((step) => (step.do === 'bake' ? step.load : [])));
  const longest = loads.reduce((most, load) => Math.max(most, load), 0);
  const decks = ovens.sound.filter(({ value }) => value.loading === 'together');
  return new Map(decks.flatMap(({ value }) => value.decks.map(({ id }) => [`${value.id}/${id}`, longest] as const)));
}

export function underwayStates(parts: Parts): readonly CodedError[] {
  const { underway, clock } = parts;
  if (underway === undefined) return [];
  const { now, tasks } = underway;
  const upsideDown = tasks.sound
    .filter(({ value }) => value.end < value.start)
    .map(({ at, value: { step, start, end } }) => {
      const says = `A ${step} under way ends at minute ${end}, ${amount(start - end, 'minute')} before it begins.`;
      return inputErrorAt('STEP_UPSIDE_DOWN', `${at}/end`, says, 'Put the end after the beginning.');
    });
  const isOutside = now !== undefined && clock !== undefined && clock.minutes > 0 && now > clock.minutes;
  const says = `Now is minute ${now}, and the day ends at minute ${clock?.minutes}.`;
  const outside = isOutside ? [inputErrorAt('NOW_OUTSIDE_DAY', '/underway/now', says, 'Write a minute of the day.')] : [];
  if (now === undefined) return [...outside, ...upsideDown];
  const loads = togetherLoads(parts);
  const chains = underwayChains(parts);
  return [
    ...outside,
    ...upsideDown,
    ...allChains(chains).flatMap((chain) => chainErrors(now, chain, loads)),
    ...chains.flatMap(betweenErrors),
  ];
}
