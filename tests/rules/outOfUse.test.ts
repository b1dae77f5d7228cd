// OUT_OF_USE. Something in a deck, bowl, proofer or retarder that may not be used.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { RuleCode } from '../../src/model/rules.ts';
import type { OutOfUse } from '../../src/model/underway.ts';
import * as coldNight from './plans/coldNight.ts';
import { dayUnderway } from './plans/dayUnderway.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited } from './spoil.ts';

const market = { scenario: marketMorning.scenario, plan: marketMorning.bare };

/** Codes seen at a minute of a day that goes as planned, with something out from when until when. */
function seen(
  { scenario, plan }: typeof market,
  now: number,
  kind: OutOfUse['kind'],
  id: string,
  from: number,
  until: number,
): readonly RuleCode[] {
  const out = edited(dayUnderway(scenario, plan, now), (copy) => {
    copy.underway.out = [{ kind, id, from, until }];
  });
  return codesSeen(out, plan);
}

describe('OUT_OF_USE', () => {
  it('lets a bake end as its deck goes out, and begin as it comes back', () => {
    // The buns bake on the lower deck from 150 to 163, the loaf from 98 to 128.
    expect(seen(market, 100, 'deck', 'hearth/lower', 163, 300)).toEqual([]);
    expect(seen(market, 100, 'deck', 'hearth/lower', 162, 300)).toEqual(['OUT_OF_USE']);
    expect(seen(market, 100, 'deck', 'hearth/lower', 128, 150)).toEqual([]);
    expect(seen(market, 100, 'deck', 'hearth/lower', 128, 151)).toEqual(['OUT_OF_USE']);
    expect(seen(market, 100, 'deck', 'hearth/upper', 128, 300)).toEqual([]);
  });

  it('lets nothing that has begun bake on, and forgets what is over', () => {
    expect(seen(market, 100, 'deck', 'hearth/upper', 90, 100)).toEqual([]);
    expect(seen(market, 100, 'deck', 'hearth/upper', 90, 101)).toEqual(['OUT_OF_USE']);
    const out = edited(dayUnderway(market.scenario, market.plan, 100), (copy) => {
      copy.underway.out = [{ kind: 'deck', id: 'hearth/upper', from: 95, until: 110 }];
    });
    expect(judge(out, market.plan).breaches).toEqual([
      {
        rule: 'OUT_OF_USE',
        says: 'field-loaf-1/bake is there between 04:40 and 04:50, and the deck hearth/upper is out of use from 04:35 to 04:50.',
        doThis: 'Use another one, or wait until it is back in use.',
        taskIds: ['field-loaf-1/bake'],
        minute: 100,
      },
    ]);
  });

  it('lets no batch be mixed in a bowl that is out', () => {
    expect(seen(market, 60, 'mixer', 'small', 60, 67)).toEqual([]);
    expect(seen(market, 60, 'mixer', 'small', 60, 68)).toEqual(['OUT_OF_USE']);
    expect(seen(market, 60, 'mixer', 'big', 0, 300)).toEqual([]);
  });

  it('lets what is in a cabinet stay, and nothing new in', () => {
    // The buns go into the warm box at 110 and at 115 and leave it at 149 and 150.
    expect(seen(market, 100, 'proofer', 'warm-box', 116, 300)).toEqual([]);
    expect(seen(market, 100, 'proofer', 'warm-box', 115, 300)).toEqual(['OUT_OF_USE']);
    expect(seen(market, 100, 'proofer', 'warm-box', 100, 110)).toEqual([]);
    expect(seen(market, 100, 'proofer', 'warm-box', 100, 111)).toEqual(['OUT_OF_USE']);
    expect(seen(market, 116, 'proofer', 'warm-box', 100, 300)).toEqual([]);
    // Loaves go into the cold at 85 and 95, their dough at 10.
    expect(seen(coldNight, 20, 'retarder', 'cold', 20, 85)).toEqual([]);
    expect(seen(coldNight, 20, 'retarder', 'cold', 20, 86)).toEqual(['OUT_OF_USE']);
    expect(seen(coldNight, 20, 'retarder', 'chest', 20, 700)).toEqual([]);
  });
});
