// The learning solver against all assignments tried one by one: small random problems of every kind of rule it knows, and pigeonholes
// (Haken 1985, Theoretical Computer Science 39: one pigeon more than there are holes has no place), which take it thousands of conflicts.
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { type CrowdUse, Engine } from '../../../src/solver/learning/engine.ts';
import { atMost, isFalse, isTrue, type Literal } from '../../../src/solver/learning/literal.ts';

/** As much of the standard's interface as is used here. */
declare const WebAssembly: { readonly Module: unknown };

const TIMES = 4;
const FLAGS = 3;
const MOST_TIME = 4;
/** Uses may begin before the first hour and end after the last: there is no room then. */
const HOURS = MOST_TIME + 3;
const MOST_LENGTH = 3;
/** All instants that a use may take. */
const INSTANTS = Array.from({ length: MOST_TIME + MOST_LENGTH + 1 }, (_, i) => i - 1);
/** Variables in the order they are added: times, flags, the total. */
const TOTAL = TIMES + FLAGS;
const MOST_TOTAL = 60;

type Rules = {
  readonly arcs: readonly { readonly from: number; readonly to: number; readonly lag: number; readonly flag: number | null }[];
  readonly clauses: readonly (readonly { readonly variable: number; readonly atMost: boolean; readonly value: number }[])[];
  readonly capacity: readonly number[];
  readonly uses: readonly {
    readonly at: number;
    readonly offset: number;
    readonly length: number;
    readonly amount: number;
    readonly flag: number | null;
  }[];
  readonly weights: readonly number[];
};

const aTime = fc.integer({ min: 0, max: TIMES - 1 });
const aFlag = fc.option(fc.integer({ min: TIMES, max: TIMES + FLAGS - 1 }), { freq: 2 });

type Room = Pick<Rules, 'capacity' | 'uses'>;

const anyRoom: fc.Arbitrary<Room> = fc.record({
  capacity: fc
    .constantFrom(1, 2, 3)
    .chain((most) => fc.array(fc.integer({ min: 0, max: most }), { minLength: HOURS, maxLength: HOURS })),
  uses: fc.array(
    fc.record({
      at: aTime,
      offset: fc.integer({ min: -1, max: 0 }),
      length: fc.integer({ min: 0, max: MOST_LENGTH }),
      amount: fc.integer({ min: 1, max: 2 }),
      flag: aFlag,
    }),
    { maxLength: 7 },
  ),
});

/** One place in nearly every hour, a use for each time: they go one by one, which has arguments of its own. */
const onePlace: fc.Arbitrary<Room> = fc.record({
  capacity: fc
    .array(fc.constantFrom(1, 1, 1, 1, 0), { minLength: HOURS, maxLength: HOURS })
    .map((hours) => hours.map((places, t) => (t === 0 ? 1 : places))),
  uses: fc
    .array(fc.record({ length: fc.integer({ min: 1, max: MOST_LENGTH }), flag: aFlag }), { minLength: TIMES, maxLength: TIMES })
    .map((uses) => uses.map(({ length, flag }, at) => ({ at, offset: 0, length, amount: 1, flag }))),
});

const someRules: fc.Arbitrary<Rules> = fc
  .record({
    arcs: fc.array(fc.record({ from: aTime, to: aTime, lag: fc.integer({ min: -3, max: 3 }), flag: aFlag }), { maxLength: 5 }),
    clauses: fc.array(
      fc.array(
        fc.record({
          variable: fc.integer({ min: 0, max: TIMES + FLAGS - 1 }),
          atMost: fc.boolean(),
          value: fc.integer({ min: 0, max: 3 }),
        }),
        { minLength: 1, maxLength: 4 },
      ),
      { maxLength: 5 },
    ),
    room: fc.oneof(anyRoom, onePlace),
    weights: fc.array(fc.constantFrom(-2, -1, 1, 2, 3), { minLength: TIMES + FLAGS, maxLength: TIMES + FLAGS }),
  })
  .map(({ room, ...others }) => ({ ...others, ...room }));

function literalOf({ variable, atMost: isMost, value }: Rules['clauses'][number][number]): Literal {
  return isMost ? atMost(variable, value) : { side: 2 * variable, low: value };
}

function usesOf(rules: Rules): CrowdUse[] {
  return rules.uses.map(({ at, offset, length, amount, flag }) => ({
    from: at,
    fromOff: offset,
    until: at,
    untilOff: offset + length,
    amount,
    length,
    condition: flag === null ? null : isTrue(flag),
  }));
}

function engineOf(rules: Rules, isThorough: boolean): { readonly engine: Engine; readonly isPossible: boolean } {
  const engine = new Engine();
  for (let v = 0; v < TIMES; v++) engine.addVariable(0, MOST_TIME);
  for (let v = 0; v < FLAGS; v++) engine.addVariable(0, 1);
  engine.addVariable(-MOST_TOTAL, MOST_TOTAL);
  let isPossible = true;
  for (const { from, to, lag, flag } of rules.arcs)
    if (from !== to) engine.addArc(from, to, lag, flag === null ? null : isTrue(flag));
  for (const clause of rules.clauses) if (!engine.addClause(clause.map(literalOf))) isPossible = false;
  const capacity = Int32Array.from(rules.capacity);
  engine.addCrowd(capacity, usesOf(rules));
  if (isThorough) engine.addEnergy(capacity, usesOf(rules));
  engine.addSum(
    TOTAL,
    rules.weights.map((weight, variable) => ({ variable, weight })),
  );
  return { engine, isPossible: isPossible && engine.freeze(new Float64Array(engine.variableCount)) };
}

/** Whether an assignment of times and flags keeps every rule. */
function isKept(rules: Rules, value: readonly number[]): boolean {
  const at = (v: number): number => value[v] as number;
  const isOn = (flag: number | null): boolean => flag === null || at(flag) === 1;
  return (
    rules.arcs.every(({ from, to, lag, flag }) => from === to || !isOn(flag) || at(to) >= at(from) + lag) &&
    rules.clauses.every((clause) =>
      clause.some((literal) => (literal.atMost ? at(literal.variable) <= literal.value : at(literal.variable) >= literal.value)),
    ) &&
    INSTANTS.every((t) => {
      const inside = rules.uses.filter(({ at: v, offset, length, flag }) => {
        const from = at(v) + offset;
        return isOn(flag) && from <= t && t < from + length;
      });
      return inside.reduce((sum, { amount }) => sum + amount, 0) <= (rules.capacity[t] ?? 0);
    })
  );
}

function totalOf(rules: Rules, value: readonly number[]): number {
  return rules.weights.reduce((sum, weight, v) => sum + weight * (value[v] as number), 0);
}

function* allAssignments(): Generator<readonly number[]> {
  const sizes = [...Array(TIMES).fill(MOST_TIME + 1), ...Array(FLAGS).fill(2)] as number[];
  const count = sizes.reduce((product, size) => product * size, 1);
  for (let k = 0; k < count; k++) {
    let rest = k;
    yield sizes.map((size) => {
      const digit = rest % size;
      rest = (rest - digit) / size;
      return digit;
    });
  }
}

/** The assignments that keep the rules. */
function keptByTrying(rules: Rules): (readonly number[])[] {
  return [...allAssignments()].filter((value) => isKept(rules, value));
}

function holds({ side, low }: Literal, value: readonly number[]): boolean {
  const at = value[side >> 1] as number;
  return (side & 1) === 0 ? at >= low : -at >= low;
}

/** The assignment that the engine has come to, which keeps the rules. */
function solutionIn(engine: Engine, rules: Rules): readonly number[] {
  const value = Array.from({ length: TIMES + FLAGS }, (_, v) => engine.min(v));
  expect(value).toEqual(Array.from({ length: TIMES + FLAGS }, (_, v) => engine.max(v)));
  expect(isKept(rules, value), JSON.stringify(value)).toBe(true);
  return value;
}

/** The least total by the engine, which asks for a smaller one until there is none. */
function leastByEngine(engine: Engine, rules: Rules): number {
  let least = Number.POSITIVE_INFINITY;
  for (;;) {
    const assumed = Number.isFinite(least) ? [atMost(TOTAL, least - 1)] : [];
    const outcome = engine.search(assumed, 10_000, () => true);
    if (outcome === 'refuted' || outcome === 'impossible') return least;
    expect(outcome).toBe('solution');
    const total = totalOf(rules, solutionIn(engine, rules));
    expect(total).toBeLessThan(least);
    least = total;
  }
}

/** What is assumed at a time, and what the engine decides for first. */
type Asked = { readonly assumed: readonly Literal[]; readonly target: readonly number[] };

const someAsked: fc.Arbitrary<readonly Asked[]> = fc.array(
  fc.record({
    assumed: fc.array(
      fc
        .record({
          variable: fc.integer({ min: 0, max: TIMES + FLAGS - 1 }),
          atMost: fc.boolean(),
          value: fc.integer({ min: 0, max: 4 }),
        })
        .map(literalOf),
      { minLength: 1, maxLength: 4 },
    ),
    target: fc.array(fc.integer({ min: 0, max: MOST_TIME }), { minLength: TIMES + FLAGS, maxLength: TIMES + FLAGS }),
  }),
  { minLength: 30, maxLength: 30 },
);

/** Asks under assumptions, one after another, what is learned kept: there is a solution where some assignment fits them. */
function expectAnswers(engine: Engine, rules: Rules, kept: readonly (readonly number[])[], asked: readonly Asked[]): void {
  for (const { assumed, target } of asked) {
    engine.target.set(target);
    const outcome = engine.search(assumed, 10_000, () => true);
    const isThere = kept.some((value) => assumed.every((literal) => holds(literal, value)));
    expect(outcome === 'solution', JSON.stringify(assumed)).toBe(isThere);
    if (outcome !== 'solution') continue;
    const value = solutionIn(engine, rules);
    expect(assumed.every((literal) => holds(literal, value))).toBe(true);
  }
}

test.each([
  ['without', false],
  ['with', true],
])('it finds what trying everything finds, %s the slower arguments', (_, isThorough) => {
  let found = 0;
  fc.assert(
    fc.property(someRules, someAsked, (rules, asked) => {
      const kept = keptByTrying(rules);
      const least = kept.reduce((total, value) => Math.min(total, totalOf(rules, value)), Number.POSITIVE_INFINITY);
      if (kept.length > 0) found++;
      const { engine, isPossible } = engineOf(rules, isThorough);
      if (isPossible) {
        expectAnswers(engine, rules, kept, asked);
        expect(leastByEngine(engine, rules)).toBe(least);
        // The least total is not asserted: all that fits may still be found.
        expectAnswers(engine, rules, kept, asked);
      } else expect(kept).toEqual([]);
    }),
    { numRuns: 400 },
  );
  // Of the problems drawn enough have a solution, and enough have none.
  expect(found).toBeGreaterThan(40);
  expect(found).toBeLessThan(360);
});

/** Pigeons each in some hole, no two in one. */
function pigeons(count: number, holes: number): Engine {
  const engine = new Engine();
  const inHole = Array.from({ length: count }, () => Array.from({ length: holes }, () => engine.addVariable(0, 1)));
  for (const mine of inHole) engine.addClause(mine.map(isTrue));
  for (let hole = 0; hole < holes; hole++)
    for (let a = 0; a < count; a++)
      for (let b = 0; b < a; b++) engine.addClause([isFalse(inHole[a]?.[hole] as number), isFalse(inHole[b]?.[hole] as number)]);
  expect(engine.freeze(new Float64Array(engine.variableCount))).toBe(true);
  return engine;
}

describe('many conflicts', () => {
  test('nine pigeons have no place in eight holes, and more clauses are learned than are kept', () => {
    const engine = pigeons(9, 8);
    expect(engine.search([], 1_000_000, () => true)).toBe('impossible');
    expect(engine.conflicts).toBeGreaterThan(4000);
    expect(engine.search([], 10, () => true)).toBe('impossible');
  });

  test('a limit of conflicts is kept, whoever asked may stop it, and it goes on where it was', () => {
    const engine = pigeons(9, 8);
    expect(engine.search([], 100, () => true)).toBe('limit');
    expect(engine.conflicts).toBe(100);
    // A part of a conflict is a whole one.
    expect(engine.search([], 25.5, () => true)).toBe('limit');
    expect(engine.conflicts).toBe(126);
    let asked = 0;
    expect(engine.search([], 100_000, () => ++asked < 3)).toBe('limit');
    expect(asked).toBe(3);
    expect(engine.conflicts).toBeLessThan(1000);
    expect(engine.search([], Number.POSITIVE_INFINITY, () => true)).toBe('impossible');
  });

  test('what it decides for first is what it is told to', () => {
    const engine = pigeons(8, 8);
    for (let round = 0; round < 2; round++) {
      const { target } = engine;
      for (let v = 0; v < 64; v++) target[v] = v >> 3 === ((v + round) & 7) ? 1 : 0;
      expect(engine.search([], 100_000, () => true)).toBe('solution');
      for (let v = 0; v < 64; v++) expect(engine.min(v)).toBe(engine.target[v]);
    }
  });

  test('choices before times, whatever a time is worth: the time gives way', () => {
    const engine = new Engine();
    const [time, choice] = [engine.addVariable(0, 9), engine.addVariable(0, 1)];
    // Where the choice is yes the time is at least 5; both together are not what is wanted of each.
    engine.addArc(engine.addVariable(0, 0), time, 5, isTrue(choice));
    engine.freeze(Float64Array.of(1, 0, 0));
    engine.target.set([2, 1, 0]);
    expect(engine.search([], 10, () => true)).toBe('solution');
    expect([engine.min(choice), engine.min(time)]).toEqual([1, 5]);
  });

  test('that is kept where memory moves', () => {
    const engine = pigeons(9, 8);
    const before = engine.target;
    before[5] = 1;
    expect(engine.search([], 5000, () => true)).toBe('limit');
    expect(before.length).toBe(0);
    expect(engine.target.length).toBe(72);
    expect(engine.target[5]).toBe(1);
  });
});

test('what is assumed is refuted without harm, and what is asserted stays', () => {
  const engine = new Engine();
  const [a, b] = [engine.addVariable(0, 9), engine.addVariable(0, 9)];
  engine.addArc(a, b, 3);
  engine.freeze(new Float64Array(2));
  expect(engine.min(b)).toBe(3);
  expect(engine.max(a)).toBe(6);
  expect(engine.search([atMost(b, 2)], 10, () => true)).toBe('refuted');
  expect(engine.search([atMost(b, 3)], 10, () => true)).toBe('solution');
  expect([engine.min(a), engine.min(b)]).toEqual([0, 3]);
  expect(engine.assert(2 * a, 5)).toBe(true);
  expect(engine.search([], 10, () => true)).toBe('solution');
  expect(engine.min(b)).toBeGreaterThanOrEqual(8);
  expect(engine.assert(2 * a, 7)).toBe(false);
  expect(engine.search([], 10, () => true)).toBe('impossible');
});

test('where addresses are refused it says what to do', () => {
  class Refused {
    constructor() {
      throw new RangeError('WebAssembly.Instance(): Out of memory: Cannot allocate Wasm memory for new instance');
    }
  }
  vi.stubGlobal('WebAssembly', { Module: WebAssembly.Module, Instance: Refused });
  try {
    expect(() => new Engine()).toThrow(/ulimit -v.*--disable-wasm-trap-handler/);
  } finally {
    vi.unstubAllGlobals();
  }
  expect(new Engine().addVariable(0, 1)).toBe(0);
});
