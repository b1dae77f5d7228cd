// Tiny neutral problems of every kind the format has but loads that go together, and the least price of their schedules by trying
// every one. The oracle of tinyProblems.test.ts; shares nothing with the search, and with checkSchedule only its words.
import fc from 'fast-check';
import type { Demand, Link, ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { EMPTY } from './shops.ts';

const HORIZON = 7;

/** More than all else that a tiny schedule can cost. */
const DEAR = 1000;

const anyDemand: fc.Arbitrary<Demand> = fc
  .record({
    pools: fc.constantFrom([0], [0], [1], [0, 1]),
    amount: fc.integer({ min: 1, max: 2 }),
    fromOffset: fc.integer({ min: -1, max: 1 }),
    until: fc.constantFrom(
      { edge: 'end', offset: 0 } as const,
      { edge: 'end', offset: -1 } as const,
      { edge: 'end', offset: 1 } as const,
      { edge: 'start', offset: 2 } as const,
    ),
  })
  .map(({ pools, amount, fromOffset, until }) => ({
    pools,
    amount,
    from: { edge: 'start', offset: fromOffset },
    until,
    oncePerLoad: false,
  }));

const anyStay = fc
  .record({ chambers: fc.constantFrom([0], [0, 1]), low: fc.integer({ min: 0, max: 6 }), width: fc.integer({ min: 0, max: 3 }) })
  .map(({ chambers, low, width }) => ({ chambers, low, high: low + width, room: 1, before: 0, after: 0 }));

const anyTask = (hasStays: boolean): fc.Arbitrary<ShopTask> =>
  fc
    .record({
      minDuration: hasStays ? fc.integer({ min: 1, max: 3 }) : fc.constantFrom(0, 0, 1, 2, 3),
      slack: fc.constantFrom(0, 0, 1),
      earliestStart: fc.constantFrom(0, 0, 1, 2),
      // A unit is ready up to 1 after its task, and that is within the horizon too.
      latestEnd: fc.constantFrom(HORIZON - 1, HORIZON - 1, HORIZON - 2),
      demands: fc.array(anyDemand, { maxLength: 2 }),
      latestStart: fc.constantFrom(null, null, null, 2, 4),
      stay: hasStays ? fc.option(anyStay) : fc.constant(null),
    })
    .map(({ minDuration, slack, latestStart, stay, ...rest }) => ({
      id: 'task',
      minDuration,
      maxDuration: minDuration + slack,
      ...rest,
      ...(latestStart === null ? {} : { latestStart: Math.max(latestStart, rest.earliestStart) }),
      ...(stay === null ? {} : { stay }),
    }));

const anyLink = fc.record({
  ends: fc.constantFrom(['end', 'start'] as const, ['start', 'start'] as const, ['end', 'end'] as const),
  min: fc.integer({ min: -3, max: 2 }),
  slack: fc.constantFrom(Number.POSITIVE_INFINITY, 0, 1, 3),
});

const anyHome = fc.record({
  start: fc.integer({ min: -1, max: HORIZON - 1 }),
  chamber: fc.constantFrom(-1, 0, 1),
  pool: fc.constantFrom(-1, 0, 1),
});

type Role = 'counts' | 'alone' | 'may be omitted';

/** Links run between tasks that must be planned: what an omitted task is linked to would otherwise depend on it. */
function linksBetween(
  tasks: readonly ShopTask[],
  roles: readonly Role[],
  drawn: readonly { ends: readonly ['start' | 'end', 'start' | 'end']; min: number; slack: number }[],
): Link[] {
  // Stays that move as one are not tried.
  const leastSlack = tasks.filter(({ stay }) => stay !== undefined).length > 1 ? 1 : 0;
  const planned = roles.flatMap((role, i) => (role === 'may be omitted' ? [] : [i]));
  return drawn.flatMap(({ ends, min, slack }, i) => {
    const from = planned[i];
    const to = planned[i + 1];
    if (from === undefined || to === undefined) return [];
    return [{ from, fromEdge: ends[0], to, toEdge: ends[1], min, max: min + Math.max(leastSlack, slack) }];
  });
}

export const anyProblem = (hasStays: boolean): fc.Arbitrary<ShopProblem> =>
  fc
    .record({
      tasks: fc.array(anyTask(hasStays), { minLength: 2, maxLength: 3 }),
      roles: fc.array(fc.constantFrom<Role>('counts', 'counts', 'alone', 'may be omitted'), { minLength: 3, maxLength: 3 }),
      links: fc.array(anyLink, { maxLength: 2 }),
      capacities: fc.tuple(fc.constantFrom(1, 2, 2, 3), fc.integer({ min: 1, max: 2 })),
      closed: fc.constantFrom(null, null, 2, 4),
      dues: fc.array(fc.integer({ min: -2, max: HORIZON }), { minLength: 3, maxLength: 3 }),
      latePrice: fc.integer({ min: 0, max: 3 }),
      isOneFamily: fc.boolean(),
      makespan: fc.integer({ min: 0, max: 2 }),
      omissionPrice: fc.constantFrom(1, 5, DEAR, DEAR),
      fromFirstMark: fc.constantFrom(false, false, true),
      readyOffset: fc.integer({ min: 0, max: 1 }),
      rates: fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 })),
      initial: fc.integer({ min: 0, max: 6 }),
      homes: fc.array(fc.option(anyHome), { minLength: 3, maxLength: 3 }),
      move: fc.integer({ min: 0, max: 3 }),
    })
    .map((d): ShopProblem => {
      const roles = d.roles.slice(0, d.tasks.length);
      const open =
        d.closed === null
          ? ([[0, HORIZON]] as const)
          : ([
              [0, d.closed],
              [d.closed + 1, HORIZON],
            ] as const);
      return {
        ...EMPTY,
        horizon: HORIZON,
        tasks: d.tasks.map((task, i) => ({ ...task, id: `task ${i}` })),
        links: linksBetween(d.tasks, roles, d.links),
        pools: d.capacities.map((capacity, p) => ({ id: `pool ${p}`, capacity, open: p === 0 ? open : [[0, HORIZON]] })),
        chambers: [0, 1].map((c) => ({
          id: `chamber ${c}`,
          room: 1 + c,
          min: 0,
          max: 9,
          initial: c === 0 ? d.initial : 3,
          riseRate: d.rates[0],
          fallRate: d.rates[1],
          together: false,
        })),
        units: roles.flatMap((role, i) =>
          role === 'alone'
            ? []
            : [
                {
                  id: `unit ${i}`,
                  tasks: [i],
                  parent: null,
                  omissionPrice: role === 'counts' ? Number.POSITIVE_INFINITY : d.omissionPrice,
                  ready: { task: i, edge: 'end' as const, offset: d.readyOffset },
                  family: d.isOneFamily ? 0 : i,
                },
              ],
        ),
        families: d.isOneFamily
          ? [{ dues: [...d.dues].sort((a, b) => a - b), latePrice: d.latePrice }]
          : d.dues.map((due, i) => ({ dues: [due], latePrice: i === 1 ? 1 : d.latePrice })),
        firstMarks: roles.flatMap((role, i) => (role === 'alone' ? [] : [{ task: i, edge: 'start' as const, offset: 0 }])),
        prices: { makespan: d.makespan, stateChange: 0, fromFirstMark: d.fromFirstMark, move: d.move },
        homes: d.tasks.flatMap((task, i) => {
          const home = d.homes[i];
          if (home == null) return [];
          const pools = task.demands.map((demand) => (demand.pools.includes(home.pool) ? home.pool : -1));
          const chamber = task.stay?.chambers.includes(home.chamber) === true ? home.chamber : -1;
          return [{ task: i, start: home.start, chamber, pools }];
        }),
      };
    });

/** One way to do a task: when, and where; null: not at all. */
type Doing = { readonly start: number; readonly end: number; readonly pools: readonly number[]; readonly chamber: number } | null;

function choices<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((all, list) => all.flatMap((one) => list.map((next) => [...one, next])), [[]]);
}

function doingsOf(problem: ShopProblem, task: ShopTask, mayOmit: boolean): Doing[] {
  const doings: Doing[] = mayOmit ? [null] : [];
  const pools = choices(task.demands.map((demand) => demand.pools));
  for (let start = task.earliestStart; start <= (task.latestStart ?? problem.horizon); start++) {
    for (let lasts = task.minDuration; lasts <= task.maxDuration; lasts++) {
      const end = start + lasts;
      if (end > Math.min(task.latestEnd, problem.horizon)) continue;
      for (const chosen of pools) {
        for (const chamber of task.stay?.chambers ?? [-1]) doings.push({ start, end, pools: chosen, chamber });
      }
    }
  }
  return doings;
}

const edgeOf = (doing: NonNullable<Doing>, edge: 'start' | 'end'): number => (edge === 'start' ? doing.start : doing.end);

function keepsLinks(problem: ShopProblem, doings: readonly Doing[]): boolean {
  return problem.links.every(({ from, fromEdge, to, toEdge, min, max }) => {
    const a = doings[from];
    const b = doings[to];
    if (a == null || b == null) return true;
    const lag = edgeOf(b, toEdge) - edgeOf(a, fromEdge);
    return min <= lag && lag <= max;
  });
}

function keepsPools(problem: ShopProblem, doings: readonly Doing[]): boolean {
  const left = problem.pools.map(({ capacity, open }) =>
    Array.from({ length: problem.horizon }, (_, t) => (open.some(([from, until]) => from <= t && t < until) ? capacity : 0)),
  );
  return doings.every((doing, i) => {
    if (doing === null) return true;
    return (problem.tasks[i]?.demands ?? []).every((demand, d) => {
      const from = edgeOf(doing, demand.from.edge) + demand.from.offset;
      const until = edgeOf(doing, demand.until.edge) + demand.until.offset;
      if (until <= from) return true;
      if (from < 0 || until > problem.horizon) return false;
      const line = left[doing.pools[d] as number] as number[];
      for (let t = from; t < until; t++) {
        line[t] = (line[t] as number) - demand.amount;
        if ((line[t] as number) < 0) return false;
      }
      return true;
    });
  });
}

/** States a chamber can have, instant by instant: an interval, as long as there is any. */
function keepsChambers(problem: ShopProblem, doings: readonly Doing[]): boolean {
  return problem.chambers.every((chamber, c) => {
    const held = doings.flatMap((doing, i) => {
      const stay = problem.tasks[i]?.stay;
      return doing !== null && stay !== undefined && doing.chamber === c ? [{ ...stay, start: doing.start, end: doing.end }] : [];
    });
    let low = chamber.initial;
    let high = chamber.initial;
    for (let t = 0; t <= problem.horizon; t++) {
      if (t > 0) {
        low = Math.max(Math.min(chamber.min, chamber.initial), low - chamber.fallRate);
        high = Math.min(Math.max(chamber.max, chamber.initial), high + chamber.riseRate);
      }
      const now = held.filter(({ start, end }) => start <= t && t < end);
      if (now.reduce((sum, { room }) => sum + room, 0) > chamber.room) return false;
      for (const stay of held.filter(({ start, end }) => start <= t && t <= end)) {
        low = Math.max(low, stay.low);
        high = Math.min(high, stay.high);
      }
      if (low > high) return false;
    }
    return true;
  });
}

function priceOf(problem: ShopProblem, doings: readonly Doing[]): number {
  let price = 0;
  let makespan = 0;
  const ready: number[][] = problem.families.map(() => []);
  for (const unit of problem.units) {
    const doing = doings[unit.tasks[0] as number];
    if (doing == null) price += unit.omissionPrice;
    else if (unit.ready !== null) {
      const at = edgeOf(doing, unit.ready.edge) + unit.ready.offset;
      makespan = Math.max(makespan, at);
      ready[unit.family]?.push(at);
    }
  }
  problem.families.forEach(({ dues, latePrice }, f) => {
    const times = (ready[f] as number[]).sort((a, b) => a - b);
    times.forEach((at, k) => {
      price += latePrice * Math.max(0, at - (dues[k] as number));
    });
  });
  for (const { task, start, chamber, pools } of problem.homes ?? []) {
    const doing = doings[task];
    if (doing == null) continue;
    // A use of no length is nobody's.
    const lasts = ({ from, until }: Demand): boolean =>
      edgeOf(doing, until.edge) + until.offset > edgeOf(doing, from.edge) + from.offset;
    const isByOthers = (problem.tasks[task]?.demands ?? []).some(
      (demand, d) => (pools[d] as number) >= 0 && lasts(demand) && doing.pools[d] !== pools[d],
    );
    if (doing.start !== start || (chamber >= 0 && doing.chamber !== chamber) || isByOthers) price += problem.prices.move ?? 0;
  }
  const marks = problem.firstMarks.flatMap(({ task, edge, offset }) => {
    const doing = doings[task];
    return doing == null ? [] : [edgeOf(doing, edge) + offset];
  });
  const from = problem.prices.fromFirstMark && marks.length > 0 ? Math.min(...marks) : 0;
  return price + problem.prices.makespan * (makespan - from);
}

/** The least price of any schedule; null when there is none. */
export function leastPrice(problem: ShopProblem): number | null {
  const lists = problem.tasks.map((task, i) => {
    const unit = problem.units.find(({ tasks }) => tasks.includes(i));
    return doingsOf(problem, task, unit !== undefined && unit.omissionPrice !== Number.POSITIVE_INFINITY);
  });
  let least: number | null = null;
  const extend = (doings: Doing[]): void => {
    const list = lists[doings.length];
    if (list === undefined) {
      const price = priceOf(problem, doings);
      if (least === null || price < least) least = price;
      return;
    }
    for (const doing of list) {
      doings.push(doing);
      if (keepsLinks(problem, doings) && keepsPools(problem, doings) && keepsChambers(problem, doings)) extend(doings);
      doings.pop();
    }
  };
  extend([]);
  return least;
}
