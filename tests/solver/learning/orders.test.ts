// Many uses of one place, which go one by one: in an order that is asked for each begins when the one before has ended, worked out here
// by plain sums; in any order, by the earliest due date first the greatest lateness is least (Jackson 1955, Scheduling a production line
// to minimize maximum tardiness, Research Report 43, University of California, Los Angeles), which is worked out here too.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CrowdUse, Engine } from '../../../src/solver/learning/engine.ts';
import { atMost, isFalse, isTrue } from '../../../src/solver/learning/literal.ts';
import { OrderModel } from '../../../src/solver/learning/orderModel.ts';

/** So many that their orders stand in rows. */
const MANY = 34;
const HORIZON = 600;

type Job = { readonly length: number; readonly head: number; readonly due: number };

const someJobs = fc.array(
  fc.record({
    length: fc.integer({ min: 1, max: 9 }),
    head: fc.integer({ min: 0, max: 60 }),
    due: fc.integer({ min: 10, max: 250 }),
  }),
  { minLength: MANY, maxLength: MANY },
);

const useOf = (start: number, length: number): CrowdUse => ({
  from: start,
  fromOff: 0,
  until: start,
  untilOff: length,
  amount: 1,
  condition: null,
  length,
});

/** An engine with a job for each variable, in whichever order. */
function oneByOne(jobs: readonly Job[]): { engine: Engine; orders: OrderModel; uses: CrowdUse[]; isFirst: number[][] } {
  const engine = new Engine();
  const uses = jobs.map(({ length, head }) => useOf(engine.addVariable(head, HORIZON - length), length));
  const orders = new OrderModel(engine, (...literals) => engine.addClause(literals));
  uses.forEach((a, i) => {
    for (const b of uses.slice(i + 1)) orders.keepApart(a, b);
  });
  orders.addOrders();
  // Asking again names the choice there is.
  const isFirst = uses.map((a) => uses.map((b) => (a.from < b.from ? orders.flag(a.until, b.from, a.untilOff) : -1)));
  return { engine, orders, uses, isFirst };
}

test('in an order that is asked for all begin as early, or as late, as those before and after let them', () => {
  fc.assert(
    fc.property(
      someJobs,
      fc.array(fc.infiniteStream(fc.double({ noNaN: true })), { minLength: 3, maxLength: 3 }),
      (jobs, draws) => {
        const { engine, isFirst } = oneByOne(jobs);
        expect(engine.variableCount).toBe(MANY + (MANY * (MANY - 1)) / 2);
        expect(engine.freeze(new Float64Array(engine.variableCount))).toBe(true);
        const before = (a: number, b: number) => (a < b ? isTrue(isFirst[a]?.[b] as number) : isFalse(isFirst[b]?.[a] as number));
        for (const draw of draws) {
          const rank = jobs.map(() => draw.next().value as number);
          const order = jobs.map((_, j) => j).sort((a, b) => (rank[a] as number) - (rank[b] as number) || a - b);
          const asked = order.slice(1).map((job, k) => before(order[k] as number, job));
          const early = new Array<number>(MANY);
          let at = 0;
          for (const job of order) {
            early[job] = Math.max(at, jobs[job]?.head as number);
            at = (early[job] as number) + (jobs[job]?.length as number);
          }
          const late = new Array<number>(MANY);
          let until = HORIZON;
          for (const job of order.toReversed()) {
            until -= jobs[job]?.length as number;
            late[job] = until;
          }
          for (const [wanted, times] of [
            [0, early],
            [HORIZON, late],
          ] as const) {
            engine.target.fill(wanted, 0, MANY);
            expect(engine.search(asked, 1000, () => true)).toBe('solution');
            expect(jobs.map((_, j) => engine.min(j))).toEqual(times);
          }
          // A circle of three is no order.
          const [a, b, c] = order as [number, number, number];
          expect(engine.search([before(a, b), before(b, c), before(c, a)], 1000, () => true)).toBe('refuted');
        }
      },
    ),
    { numRuns: 15 },
  );
});

test('what can no longer come first comes second, without a search', () => {
  const { engine, isFirst } = oneByOne(new Array(MANY).fill({ length: 5, head: 0, due: 0 }));
  expect(engine.freeze(new Float64Array(engine.variableCount))).toBe(true);
  const [early, late] = [17, 23];
  const flags = isFirst.flatMap((row, a) => row.flatMap((flag, b) => (flag < 0 ? [] : [{ a, b, flag }])));
  expect(engine.assert(2 * early + 1, -95)).toBe(true);
  expect(engine.assert(2 * late, 200)).toBe(true);
  const known = flags.filter(({ flag }) => engine.min(flag) === engine.max(flag));
  expect(known).toEqual([{ a: early, b: late, flag: isFirst[early]?.[late] }]);
  expect(engine.min(isFirst[early]?.[late] as number)).toBe(1);
  expect(engine.assert(2 * early + 1, -4)).toBe(true);
  // It is the first now, and all others come after it.
  for (const { a, b, flag } of flags) {
    if (a !== early && b !== early) continue;
    expect([engine.min(flag), engine.max(flag)]).toEqual(a === early ? [1, 1] : [0, 0]);
  }
  expect(engine.min(late)).toBe(200);
  expect(engine.min(0)).toBe(5);
});

test('in any order the greatest lateness is that of the earliest due date first, and no less', () => {
  fc.assert(
    fc.property(someJobs, (given) => {
      const jobs = given.map((job) => ({ ...job, head: 0 }));
      let end = 0;
      let least = Number.NEGATIVE_INFINITY;
      for (const { length, due } of jobs.toSorted((a, b) => a.due - b.due)) {
        end += length;
        least = Math.max(least, end - due);
      }
      const { engine, orders, uses } = oneByOne(jobs);
      const lateness = engine.addVariable(-HORIZON, HORIZON);
      jobs.forEach(({ length, due }, j) => {
        engine.addArc(j, lateness, length - due);
      });
      const capacity = new Int32Array(HORIZON).fill(1);
      engine.addCrowd(capacity, uses);
      engine.addEnergy(capacity, uses);
      expect(engine.freeze(new Float64Array(engine.variableCount))).toBe(true);
      orders.aimAt(engine.target);
      expect(engine.search([atMost(lateness, least)], 100_000, () => true)).toBe('solution');
      const spans = jobs.map(({ length }, j) => [engine.min(j), engine.min(j) + length] as const).sort((a, b) => a[0] - b[0]);
      spans.slice(1).forEach(([start], k) => {
        expect(start).toBeGreaterThanOrEqual(spans[k]?.[1] as number);
      });
      expect(engine.search([atMost(lateness, least - 1)], 100_000, () => true)).toBe('refuted');
    }),
    { numRuns: 25 },
  );
});

test('where lags leave no choice, none is added, and the order holds', () => {
  const engine = new Engine();
  const [a, between, b, other] = [0, 1, 2, 3].map(() => engine.addVariable(0, 50)) as [number, number, number, number];
  // It begins at least a minute after another that begins no earlier than three minutes before the first.
  engine.addArc(a, between, -3);
  engine.addArc(between, b, 4);
  const orders = new OrderModel(engine, (...literals) => engine.addClause(literals));
  const [long, short, third] = [useOf(a, 20), useOf(b, 5), useOf(other, 5)];
  orders.keepApart(short, long);
  orders.keepApart(third, short);
  orders.addOrders();
  expect(engine.variableCount).toBe(5);
  expect(engine.freeze(new Float64Array(5))).toBe(true);
  expect(engine.min(b)).toBe(20);
  expect(engine.max(a)).toBe(30);
});

test('lags that contradict each other leave no order, and are found out', () => {
  const engine = new Engine();
  const [a, b] = [engine.addVariable(0, 50), engine.addVariable(0, 50)];
  engine.addArc(a, b, 2);
  engine.addArc(b, a, 2);
  const orders = new OrderModel(engine, (...literals) => engine.addClause(literals));
  orders.keepApart(useOf(a, 3), useOf(b, 3));
  orders.addOrders();
  expect(engine.freeze(new Float64Array(engine.variableCount))).toBe(false);
});

test('what may be missing keeps its choice', () => {
  const engine = new Engine();
  const [a, b, isThere] = [engine.addVariable(0, 50), engine.addVariable(0, 50), engine.addVariable(0, 1)];
  engine.addArc(a, b, 1);
  const orders = new OrderModel(engine, (...literals) => engine.addClause(literals));
  orders.keepApart(useOf(a, 20), { ...useOf(b, 5), condition: isTrue(isThere) });
  orders.addOrders();
  expect(engine.freeze(new Float64Array(engine.variableCount))).toBe(true);
  engine.target.fill(0);
  expect(engine.search([isFalse(isThere)], 100, () => true)).toBe('solution');
  expect(engine.min(b)).toBeLessThan(20);
  expect(engine.search([isTrue(isThere)], 100, () => true)).toBe('solution');
  expect(engine.min(b)).toBeGreaterThanOrEqual(20);
});
