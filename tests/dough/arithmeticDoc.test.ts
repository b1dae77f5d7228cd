import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { batchKg } from '../../src/dough/batchKg.ts';
import { formulaFor } from '../../src/dough/formulaFor.ts';
import { piecesFrom } from '../../src/dough/piecesFrom.ts';
import { trayDoughKg } from '../../src/dough/trayDoughKg.ts';
import { traysFor } from '../../src/dough/traysFor.ts';

const two = z.tuple([z.number(), z.number()]);
const formula = z.record(z.string(), z.number());

/** Every function of the page, called with the arguments written there. */
const CALLS: Readonly<Record<string, (values: unknown) => unknown>> = {
  traysFor: (values) => traysFor(...two.parse(values)),
  piecesFrom: (values) => piecesFrom(...two.parse(values)),
  trayDoughKg: (values) => trayDoughKg(...z.tuple([z.object({ pieceG: z.number(), piecesPerTray: z.number() })]).parse(values)),
  batchKg: (values) => batchKg(...z.tuple([z.array(z.number()), z.number()]).parse(values)),
  formulaFor: (values) => formulaFor(...z.tuple([formula, z.number()]).parse(values)),
};

/** Numbers to four decimals, as the page writes them; batchKg is printed to the milligram and is exact. */
function toFourDecimals(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value), (_key, each) => (typeof each === 'number' ? Math.round(each * 1e4) / 1e4 : each));
}

const page = readFileSync(new URL('../../docs/arithmetic.md', import.meta.url), 'utf8');
const examples = [...page.matchAll(/```example\n([\s\S]*?)```/g)].flatMap((block) => (block[1] ?? '').trim().split('\n'));

describe('docs/arithmetic.md', () => {
  it('has examples of every function', () => {
    for (const name of Object.keys(CALLS)) expect(examples.some((line) => line.startsWith(`${name}(`))).toBe(true);
  });

  it.each(examples)('%s', (line) => {
    const [, name = '', values = '', answer = ''] = /^(\w+)\((.*)\) = (.*)$/.exec(line) ?? [];
    const got = CALLS[name]?.(JSON.parse(`[${values}]`));
    expect(toFourDecimals(got)).toEqual(toFourDecimals(JSON.parse(answer)));
  });
});
