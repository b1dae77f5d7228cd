// The plan by hand in docs/rules.md, read as anybody's plan is read, passes; and says what the page says of it.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { Reading } from '../../src/model/inputError.ts';
import { readWrittenPlan } from '../../src/read/readPlan.ts';
import { readScenario } from '../../src/read/readScenario.ts';

const root = new URL('../../', import.meta.url);

function readOrThrow<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.errors.map(({ path, says }) => `${path} ${says}`).join('\n'));
  return reading.value;
}

const page = readFileSync(new URL('docs/rules.md', root), 'utf8');
const planText = /```yaml\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
const scenario = readOrThrow(readScenario(readFileSync(new URL('scenarios/no-wait-four-doughs.yaml', root), 'utf8')));

describe('the plan in docs/rules.md', () => {
  it('passes, and ends after 200 minutes', () => {
    const { breaches, figures } = judge(scenario, readOrThrow(readWrittenPlan(planText, scenario)));
    expect(breaches).toEqual([]);
    expect(figures).toMatchObject({ finishMinute: 200, leftOutTrays: 0, lateTrayMinutes: 0, cost: 200 });
  });

  it('does not pass with a minute changed', () => {
    const late = planText.replace('start: "05:55", end: "06:15"', 'start: "05:56", end: "06:16"');
    expect(late).not.toBe(planText);
    const { breaches } = judge(scenario, readOrThrow(readWrittenPlan(late, scenario)));
    expect(breaches.map(({ rule, says }) => `${rule}: ${says}`)).toEqual([
      'STEP_ORDER: b/bake begins at 05:56, 1 minute too late: b/proof is done at 05:55 and may wait 0 minutes.',
      'SHELF_CAPACITY: proofer holds 2 trays at once between 05:55 and 05:56, 1 more than its room of 1: tray b, tray c.',
    ]);
  });
});
