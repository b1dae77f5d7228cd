// What the benchmark writes: standings and tables from rows, curves for the picture, sections of the page, verdicts on optima.
import { describe, expect, it } from 'vitest';
import type { Planner, Row } from '../../benchmarks/planners/instance.ts';
import { type Agreement, agreementText, verdictOf } from '../../benchmarks/report/agreementText.ts';
import { curvesOf } from '../../benchmarks/report/curves.ts';
import { plot } from '../../benchmarks/report/plot.ts';
import { replaceSection } from '../../benchmarks/report/section.ts';
import { contradictionIn, standingsOf } from '../../benchmarks/report/standing.ts';
import { bandTable, dearerThan, scenarioTable } from '../../benchmarks/report/tables.ts';

function row(
  scenario: string,
  planner: Planner,
  limitSeconds: number,
  cost: number | null,
  lowerBound: number,
  leftOutTrays = 0,
): Row {
  return {
    set: 'generated',
    scenario,
    trays: scenario === 'small' ? 10 : 30,
    planner,
    limitSeconds,
    cost,
    lowerBound,
    lateTrayMinutes: 0,
    leftOutTrays,
    finishMinute: cost ?? 0,
    isProved: cost === lowerBound,
    seconds: limitSeconds,
    cores: null,
    peakMb: null,
    source: 'abc',
  };
}

const ROWS = [
  row('large', 'rule', 0, 5600, 0, 1),
  row('large', 'ovenward', 2, 440, 396),
  row('large', 'cp-sat', 60, null, 380),
  row('large', 'cp-sat', 10, null, 350),
  row('small', 'rule', 0, 330, 0),
  row('small', 'ovenward', 2, 303, 300),
  row('small', 'cp-sat', 60, 300, 300),
  row('small', 'cp-sat', 10, 310, 290),
];

describe('tables', () => {
  it('best plan and highest floor are over all planners', () => {
    const [small, large] = standingsOf(ROWS);
    expect(small).toMatchObject({ scenario: 'small', best: 300, floor: 300 });
    expect(large).toMatchObject({ scenario: 'large', best: 440, floor: 396, fewestLeftOut: 0 });
  });

  it('a floor above a judged plan is named with whoever claims it', () => {
    const [small] = standingsOf(ROWS);
    const [wrong] = standingsOf([...ROWS.filter(({ scenario }) => scenario === 'small'), row('small', 'ovenward', 1, 305, 302)]);
    if (small === undefined || wrong === undefined) throw new Error('no standing');
    expect(contradictionIn(small)).toBeNull();
    expect(contradictionIn(wrong)).toBe('small: a judged plan costs 300, and a floor of 302 was claimed by ovenward 1 s');
  });

  it('every scenario has its line, the best in bold, proved ones ticked', () => {
    const lines = scenarioTable(ROWS, {}).split('\n');
    expect(lines[0]).toBe("| scenario | trays | baker's rule | ovenward 2 s | CP-SAT 60 s | highest floor |");
    expect(lines[2]).toBe('| small | 10 | 330 | 303 | **300** ✓ | 300 |');
    expect(lines[3]).toBe('| large | 30 | 5600 (1 out) | **440** | no plan | 396 |');
  });

  it('sums up by size, plans that leave more out and no plans counted apart', () => {
    const text = bandTable(ROWS, {});
    expect(text).toContain('| 10 to 10 | ovenward 2 s | 1 | 0 | 1.0 % | 1.0 % | 1.0 % | 1.0 % | 0 |');
    expect(text).toContain("| 30 to 30 | baker's rule | 1 | 1 |  |  |  |  | 0 |");
    expect(text).toContain('| 30 to 30 | CP-SAT 60 s | 1 | 1 |  |  |  |  | 0 |');
  });

  it('a reference has columns where one is known', () => {
    expect(scenarioTable(ROWS, { small: { cost: 300, bound: 299 } })).toContain('| 300 | 300 | 299 |');
    expect(bandTable(ROWS, { small: { cost: 300, bound: 299 } })).toContain(
      '| ovenward 2 s | 1 | 0 | 1.0 % | 1.0 % | 1.0 % | 1.0 % |',
    );
  });

  it('says where one is dearer than another; no plan is dearer than any', () => {
    const ours = { planner: 'ovenward', limitSeconds: 2 } as const;
    const theirs = { planner: 'cp-sat', limitSeconds: 60 } as const;
    expect(dearerThan(ROWS, ours, theirs)).toContain('on 2 scenarios: dearer on 1 (small), cheaper on 1, the same on 0');
    expect(dearerThan(ROWS, ours, { ...theirs, limitSeconds: 5 })).toBeNull();
  });
});

describe('the picture', () => {
  it('has a point where half the scenarios have a plan, and none where they have not', () => {
    const curves = curvesOf(ROWS, 30);
    expect(curves?.scenarios).toBe(1);
    const points = (planner: Planner) => curves?.gap.find((curve) => curve.planner === planner)?.points;
    expect(points('ovenward')).toEqual([{ seconds: 2, share: 0.1 }]);
    expect(points('cp-sat')).toEqual([]);
    expect(curvesOf(ROWS, 31)).toBeNull();
  });

  it('is SVG that names what it shows', () => {
    const curves = curvesOf(ROWS, 1);
    if (curves === null) throw new Error('no curves');
    const svg = plot(curves, 'Trial');
    expect(svg).toContain('Trial: median of 2 scenarios of 10 to 30 trays');
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });
});

it('a section is replaced and everything else left', () => {
  const page = 'a\n<!-- bench:one -->\nold\n<!-- /bench:one -->\nb\n<!-- bench:two -->\nkept\n<!-- /bench:two -->\n';
  const written = replaceSection(page, 'one', 'new\n');
  expect(written).toBe(page.replace('\nold\n', '\n\nnew\n\n'));
  expect(replaceSection(written, 'one', 'new')).toBe(written);
  expect(() => replaceSection(page, 'three', 'x')).toThrow(/no section three/);
});

describe('verdicts on optima', () => {
  const agreed: Agreement = {
    scenario: 's',
    ownCost: 300,
    ownFloor: 300,
    ownProved: true,
    ownSeconds: 1,
    cpCost: 300,
    cpFloor: 300,
    cpProved: true,
  };
  it.each([
    [{}, 'agree'],
    [{ ownCost: 301, ownFloor: 290, ownProved: false }, 'dearer'],
    [{ ownFloor: 301, ownCost: 301 }, 'contradiction'],
    [{ ownCost: 299, ownFloor: 299 }, 'contradiction'],
    [{ cpProved: false, cpFloor: 290 }, 'undecided'],
    [{ cpCost: null, cpFloor: 290, cpProved: false }, 'undecided'],
  ] as const)('%o: %s', (change, verdict) => {
    expect(verdictOf({ ...agreed, ...change })).toBe(verdict);
  });

  it('lists what does not agree', () => {
    const text = agreementText([agreed, { ...agreed, scenario: 'other', ownCost: 305, ownFloor: 290, ownProved: false }]);
    expect(text).toContain('Of 2 scenarios, the prices are the same on 1; on 1 of these ovenward proved it too');
    expect(text).toContain('| other | dearer | 305 | 290 | 300 | 300 |');
  });
});
