// Values of the literature, reached by the neutral solver with a stated effort and no clock. Each schedule passes the slow check
// and is recounted from the published data. Where the instances are absent, only the table that stands here is checked.
import { describe, expect, it } from 'vitest';
import { casesOf } from './allCases.ts';
import { BARS, type Bar, holds } from './bars.ts';
import { ABSENT, isPresent } from './benchFolder.ts';
import { FT06, FT06_OPTIMUM } from './ft06.ts';
import { jobShopProblem, recountJobShop, type Variant } from './jobShopCases.ts';
import type { PublishedCase } from './publishedCase.ts';
import { type Attempt, attemptInRounds } from './solveCase.ts';

if (!isPresent) console.warn(`\n${ABSENT}\n`);

/** Bars for which an effort is known on every instance. */
const tested = isPresent ? BARS.filter((bar) => Object.values(bar.rounds).every((rounds) => rounds !== null)) : [];

const attempts = new Map<string, Promise<Attempt>>();

/** The attempt on an instance with so many rounds, made once. */
function attemptOf(one: PublishedCase, rounds: number): Promise<Attempt> {
  const key = `${one.name} ${rounds}`;
  const made = attempts.get(key) ?? attemptInRounds(one, rounds);
  attempts.set(key, made);
  return made;
}

async function outcomeOf(bar: Bar): Promise<{ wrong: string[]; missed: string[] }> {
  const cases = new Map(casesOf(bar.folder).map((one) => [one.name, one]));
  const wrong: string[] = [];
  const missed: string[] = [];
  for (const [name, rounds] of Object.entries(bar.rounds)) {
    const one = cases.get(name);
    if (one === undefined || rounds === null) {
      wrong.push(`${name}: no such instance`);
      continue;
    }
    const tried = await attemptOf(one, rounds);
    wrong.push(...tried.faults.map((fault) => `${name}: ${fault}`));
    const found = tried.found === 'none' ? 'none' : tried.found.value;
    if (!holds(bar, one, tried)) missed.push(`${name}: ${found}, published ${one.published.best}`);
  }
  return { wrong, missed };
}

describe('published instances', () => {
  it('no bar asks for more instances than it names, and none for less than was published', () => {
    for (const { says, rounds, atLeast, within } of BARS) {
      expect([says, Object.keys(rounds).length >= atLeast && atLeast > 0]).toEqual([says, true]);
      expect([says, within === 'a schedule' || within >= 1]).toEqual([says, true]);
    }
    expect(new Set(BARS.map(({ says }) => says)).size).toBe(BARS.length);
  });

  for (const bar of tested) {
    it(`${bar.folder}: ${bar.says}`, { timeout: 120_000 }, async () => {
      const { wrong, missed } = await outcomeOf(bar);
      expect(wrong).toEqual([]);
      const mayMiss = Object.keys(bar.rounds).length - bar.atLeast;
      expect(missed.slice(mayMiss)).toEqual([]);
    });
  }
});

const plain: Variant = { kind: 'classic', operators: Number.POSITIVE_INFINITY };

function ft06Case(variant: Variant, best: number): PublishedCase {
  return {
    folder: 'jobshop',
    name: `ft06 as it stands here, ${variant.kind}`,
    problem: jobShopProblem(FT06, variant),
    recount: (schedule) => recountJobShop(FT06, variant, schedule),
    published: { best, isFeasible: true, isRead: true },
    priceShift: 0,
  };
}

describe('ft06, the table that stands here', () => {
  it('has six jobs, each once on each of six machines', () => {
    expect(FT06.length).toBe(6);
    for (const job of FT06) expect(job.map(([machine]) => machine).sort()).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it(`takes ${FT06_OPTIMUM}, found and proved`, async () => {
    const tried = await attemptInRounds(ft06Case(plain, FT06_OPTIMUM), 5000);
    expect(tried).toMatchObject({ found: { value: FT06_OPTIMUM }, bound: FT06_OPTIMUM, isProved: true, faults: [] });
  });

  it('is the table of the instance that is read', () => {
    if (!isPresent) {
      console.warn(`\n${ABSENT}\n`);
      expect(FT06.flat().reduce((sum, [, duration]) => sum + duration, 0)).toBe(197);
      return;
    }
    const read = casesOf('jobshop').find(({ name }) => name === 'ft06');
    expect(read?.problem).toEqual(jobShopProblem(FT06, plain));
    expect(read?.published.best).toBe(FT06_OPTIMUM);
  });
});
