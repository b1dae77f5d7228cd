// The bakehouse of a day under way from now on: hours and spans count from now, decks start at the temperature they have, and
// what is out of use is closed. Used by shopProblem.ts.
import type { Clock } from '../model/clock.ts';
import type { SetPoint } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { Demand, Pool, ShopTask } from '../solver/problem.ts';
import type { ShopPools } from './shopPools.ts';

type Span = readonly [number, number];

/** Spans without another span. */
function without(spans: readonly Span[], [from, until]: Span): Span[] {
  return spans
    .flatMap(([a, b]): Span[] => [
      [a, Math.min(b, from)],
      [Math.max(a, until), b],
    ])
    .filter(([a, b]) => a < b);
}

/** The same minutes in spans that neither overlap nor touch, the first first. */
function united(spans: readonly Span[]): Span[] {
  const all: Span[] = [];
  for (const [from, until] of [...spans].sort(([a], [b]) => a - b)) {
    const [start, end] = all.at(-1) ?? [0, Number.NEGATIVE_INFINITY];
    if (from <= end) all.splice(-1, 1, [start, Math.max(end, until)]);
    else all.push([from, until]);
  }
  return all;
}

/** Spans in which nothing new may go to a place, by its id, counted from now. */
function closedSpans(scenario: Scenario): { readonly id: string; readonly span: Span }[] {
  const { now, out } = scenario.underway ?? { now: 0, out: [] };
  return out.flatMap(({ kind, id, from, until }) =>
    kind === 'deck' || until <= now ? [] : [{ id, span: [Math.max(0, from - now), until - now] as const }],
  );
}

/** Until when people are at work on what is over otherwise: a tray being unloaded. Counted from now. */
function unloading(scenario: Scenario): { readonly person: string; readonly until: number }[] {
  const { now, tasks } = scenario.underway ?? { now: 0, tasks: [] };
  return tasks.flatMap(({ state, handsOn }) =>
    state !== 'planned'
      ? handsOn
          .filter((work) => work.for === 'unload' && work.start <= now && work.end > now)
          .map(({ person, end }) => ({ person, until: end - now }))
      : [],
  );
}

/**
 * Pools and chambers from now on. `isNarrowed`: a cabinet goes out of use later; that nothing is in it then is more than the rule
 * asks, which lets stay what is in it.
 */
export function shopFromNow(
  scenario: Scenario,
  shop: ShopPools,
  clock: Clock,
): { readonly shop: ShopPools; readonly isNarrowed: boolean } {
  const { underway } = scenario;
  if (underway === undefined) return { shop, isNarrowed: false };
  const { now, decks, tasks } = underway;
  const closed = closedSpans(scenario);
  const atWork = unloading(scenario);
  const pools = shop.pools.map((pool, p): Pool => {
    const role = shop.roles[p];
    let open: Span[] = pool.open.map(([a, b]) => [Math.max(0, a - now), Math.min(b, clock.minutes) - now] as const);
    open = open.filter(([a, b]) => a < b);
    for (const { id, span } of closed) if (role !== undefined && 'id' in role && role.id === id) open = without(open, span);
    for (const { person, until } of atWork)
      if (role?.kind === 'people' && role.ids.includes(person)) open = without(open, [0, until]);
    return { ...pool, open };
  });
  const chambers = shop.chambers.map((chamber) => {
    const moves = decks.find(({ id }) => id === chamber.id)?.setPoints ?? [];
    const hasArrived = moves.some(({ fromC, toC, end }) => fromC !== toC && end <= now);
    const hasBaked = tasks.some(
      ({ step, state, place, start }) => step === 'bake' && state !== 'planned' && place?.id === chamber.id && start <= now,
    );
    const last = moves.at(-1);
    const isMoving = last !== undefined && last.end > now && last.start < now;
    const initial = isMoving ? temperatureAt(last, now) : (last?.toC ?? chamber.initial);
    const underWay = isMoving ? { underWay: { end: last.end - now, to: last.toC } } : {};
    return { ...chamber, initial, isSettled: hasArrived || hasBaked, ...underWay };
  });
  const cabinets = underway.out.filter(({ kind }) => kind === 'proofer' || kind === 'retarder');
  return { shop: { ...shop, pools, chambers }, isNarrowed: cabinets.some(({ from, until }) => from > now && until > now) };
}

/** Temperature within a move, which is even. */
export function temperatureAt({ start, end, fromC, toC }: SetPoint, minute: number): number {
  return fromC + ((toC - fromC) * (minute - start)) / (end - start);
}

/** What keeps the decks that are out of use full: a stay of their whole room, in whatever state. */
export function outages(scenario: Scenario, shop: ShopPools): ShopTask[] {
  const { now, out } = scenario.underway ?? { now: 0, out: [] };
  return shop.chambers.flatMap(({ id, room }, chamber) => {
    const ofDeck = out.filter((each) => each.kind === 'deck' && each.id === id && each.until > now);
    // Told twice, a deck is out of use once: there is room in it for one such stay at a time.
    const spans = united(ofDeck.map(({ from, until }) => [Math.max(0, from - now), until - now] as const));
    const stay = {
      chambers: [chamber],
      low: Number.NEGATIVE_INFINITY,
      high: Number.POSITIVE_INFINITY,
      room,
      before: 0,
      after: 0,
    };
    return spans.map(([start, end]): ShopTask => {
      const lasts = end - start;
      const when = { minDuration: lasts, maxDuration: lasts, earliestStart: start, latestStart: start, latestEnd: end };
      return { id: `${id} out of use`, ...when, demands: [], stay };
    });
  });
}

/** Lets what is in a cabinet stay while it is out of use: it then takes no place of it. */
export function staying(
  scenario: Scenario,
  shop: ShopPools,
  tasks: readonly ShopTask[],
  isAtWork: (task: number) => boolean,
): readonly ShopTask[] {
  const closed = closedSpans(scenario);
  if (closed.length === 0) return tasks;
  return tasks.map((task, i) => {
    if (!isAtWork(i)) return task;
    const demands = task.demands.flatMap((demand): Demand[] => {
      const role = shop.roles[demand.pools[0] ?? -1];
      if (role?.kind !== 'shelf' && role?.kind !== 'retarder') return [demand];
      const until = Math.max(0, ...closed.filter(({ id, span }) => id === role.id && span[0] === 0).map(({ span }) => span[1]));
      if (until === 0) return [demand];
      return task.maxDuration <= until ? [] : [{ ...demand, from: { edge: 'start', offset: until } }];
    });
    return { ...task, demands };
  });
}
