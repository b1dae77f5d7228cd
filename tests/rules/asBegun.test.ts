// AS_BEGUN. Something that has happened written otherwise. At minute 100, 04:40, the loaves bake and the milk dough is being shaped.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';
import * as coldNight from './plans/coldNight.ts';
import { dayUnderway, recordOf } from './plans/dayUnderway.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import * as rackMorning from './plans/rackMorning.ts';
import { codesSeen, edited, moveOf, nth, placeOf, spoiled, task, workOf } from './spoil.ts';

const at100 = dayUnderway(marketMorning.scenario, marketMorning.bare, 100);

function without(plan: WrittenPlan, isGone: (task: WrittenPlan['tasks'][number]) => boolean): WrittenPlan {
  return { ...plan, tasks: plan.tasks.filter((one) => !isGone(one)) };
}

/** Every minute at which something begins or ends, and the one before and after. */
function turns(plan: WrittenPlan): readonly number[] {
  const spans = [...plan.tasks, ...plan.tasks.flatMap(({ handsOn }) => handsOn), ...plan.decks.flatMap((deck) => deck.setPoints)];
  const minutes = spans.flatMap(({ start, end }) => [start, end]).flatMap((minute) => [minute - 1, minute, minute + 1]);
  return [...new Set(minutes)].filter((minute) => minute >= 0).sort((a, b) => a - b);
}

describe('AS_BEGUN', () => {
  it('sees nothing where all goes as it was planned, whatever the minute', () => {
    const good = [{ scenario: marketMorning.scenario, plan: marketMorning.bare }, quietHouse, rackMorning, coldNight];
    for (const { scenario, plan } of good) {
      const { figures } = judge(scenario, plan);
      for (const now of turns(plan)) {
        expect(judge(dayUnderway(scenario, plan, now), plan), `${scenario.name} at ${now}`).toEqual({
          breaches: [],
          figures: { ...figures, movedTasks: 0 },
        });
      }
    }
  });

  it('sees another start, and another end of what has ended', () => {
    const earlier = spoiled(at100, (scenario) => {
      recordOf(scenario, 'field-loaf-1/proof').start = 50;
    });
    expect(codesSeen(earlier, marketMorning.bare)).toEqual(['AS_BEGUN']);
    const shorter = spoiled(marketMorning.bare, (plan) => {
      task(plan, 'field-loaf-1/proof').end = 90;
    });
    expect(codesSeen(at100, shorter)).toEqual(['AS_BEGUN']);
    expect(judge(at100, shorter).breaches[0]?.says).toBe('field-loaf-1/proof ended at 04:31; the plan ends it at 04:30.');
  });

  it('sees another position, also of what is over', () => {
    const moved = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'field-loaf-1/bake').id = 'hearth/lower';
    });
    expect(codesSeen(at100, moved)).toContain('AS_BEGUN');
    const shifted = spoiled(at100, (scenario) => {
      const { place } = recordOf(scenario, 'field-loaf-2/proof');
      if (place !== undefined) place.position = 1;
    });
    expect(codesSeen(shifted, marketMorning.bare)).toEqual(['AS_BEGUN']);
    expect(judge(shifted, marketMorning.bare).breaches[0]?.says).toBe(
      'field-loaf-2/proof is in warm-box, position 1; the plan has it in warm-box, position 2.',
    );
  });

  it('sees other people at what has begun, and lets others do what has not', () => {
    const loadedByAnother = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'field-loaf-1/bake').person = 'ana';
    });
    expect(codesSeen(at100, loadedByAnother)).toEqual(['AS_BEGUN']);
    expect(judge(at100, loadedByAnother).breaches.map(({ says }) => says)).toEqual([
      'At field-loaf-1/bake was bem for load from 04:31 to 04:32; the plan does not have it.',
      'The plan has at field-loaf-1/bake ana for load from 04:31 to 04:32; it was not so.',
    ]);
    const unloadedByAnother = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'milk-bun-1/bake', 1).person = 'bem';
    });
    expect(codesSeen(dayUnderway(marketMorning.scenario, marketMorning.bare, 155), unloadedByAnother)).toEqual([]);
  });

  it('lets what is at work end otherwise', () => {
    const longer = edited(quietHouse.plan, (plan) => {
      task(plan, 'roll-1/bake').end = 66;
      task(plan, 'roll-1/cool').start = 66;
    });
    expect(codesSeen(dayUnderway(quietHouse.scenario, quietHouse.plan, 60), longer)).toEqual([]);
    expect(codesSeen(dayUnderway(quietHouse.scenario, quietHouse.plan, 66), longer)).toContain('AS_BEGUN');
  });

  it('sees a bake that is said to be over and is not', () => {
    const stillIn = edited(dayUnderway(quietHouse.scenario, quietHouse.plan, 60), (scenario) => {
      scenario.underway.now = 66;
      recordOf(scenario, 'roll-1/bake').overrunMinutes = 1;
    });
    const later = edited(quietHouse.plan, (plan) => {
      Object.assign(task(plan, 'roll-1/cool'), { start: 66, end: 75 });
    });
    expect(codesSeen(stillIn, later)).toEqual(['AS_BEGUN']);
    expect(judge(stillIn, later).breaches[0]?.says).toBe('roll-1/bake is not done at 07:06; in the plan it is done at 07:05.');
  });

  it('lets a proof be over before now, and the tray wait', () => {
    const at52 = dayUnderway(quietHouse.scenario, quietHouse.plan, 52);
    expect(recordOf(at52, 'roll-2/proof').state).toBe('begun');
    const sooner = edited(quietHouse.plan, (plan) => {
      task(plan, 'roll-2/proof').end = 48;
    });
    expect(codesSeen(at52, sooner)).toEqual([]);
  });

  it('sees a deck that was at another temperature, up to now and not after', () => {
    const hotter = spoiled(at100, (scenario) => {
      nth(nth(scenario.underway.decks, 1).setPoints, 0).toC = 234;
    });
    expect(codesSeen(hotter, marketMorning.bare)).toEqual(['AS_BEGUN']);
    expect(judge(hotter, marketMorning.bare).breaches[0]?.minute).toBe(51);
    const forgotten = edited(marketMorning.bare, (plan) => {
      plan.decks.splice(0, 1);
    });
    expect(codesSeen(at100, forgotten)).toContain('AS_BEGUN');
    const cooledTo = (celsius: number) =>
      edited(marketMorning.bare, (plan) => {
        moveOf(plan, 'hearth/lower', 1).toC = celsius;
      });
    for (const now of [100, 128]) {
      expect(codesSeen(dayUnderway(marketMorning.scenario, marketMorning.bare, now), cooledTo(196))).toEqual([]);
    }
    expect(codesSeen(dayUnderway(marketMorning.scenario, marketMorning.bare, 129), cooledTo(196))).toEqual(['AS_BEGUN']);
  });

  it('lets a move under way be changed from now on', () => {
    const at138 = dayUnderway(marketMorning.scenario, marketMorning.bare, 138);
    const stopped = edited(marketMorning.bare, (plan) => {
      Object.assign(moveOf(plan, 'hearth/lower', 1), { end: 138, toC: 215 });
      nth(plan.decks, 1).setPoints.push({ start: 139, end: 149, fromC: 215, toC: 195 });
    });
    expect(codesSeen(at138, stopped)).toEqual([]);
  });

  it('lets a tray that has begun be left out, but not a part of it', () => {
    const whole = without(marketMorning.bare, ({ tray }) => tray === 'field-loaf-2');
    expect(codesSeen(at100, whole)).toEqual([]);
    expect(judge(at100, whole).figures.leftOutTrays).toBe(1);
    const part = without(marketMorning.bare, ({ id }) => id === 'field-loaf-2/proof');
    expect(codesSeen(at100, part)).toEqual(['STEP_COMPLETE']);
    const batch = without(marketMorning.bare, (one) => one.batch === 'country-1');
    expect(codesSeen(at100, batch)).toEqual([]);
    const trays = without(marketMorning.bare, (one) => one.batch === 'country-1' && one.tray === undefined);
    expect(codesSeen(at100, trays)).toEqual(['STEP_COMPLETE']);
  });

  it('takes a place of a kind that has no limit as stated or left away', () => {
    const at74 = edited(dayUnderway(quietHouse.scenario, quietHouse.plan, 74), (scenario) => {
      recordOf(scenario, 'roll-1/cool').place = { kind: 'rack', id: 'cooling-rack', position: 2 };
    });
    expect(recordOf(at74, 'roll-1/cool').state).toBe('begun');
    expect(codesSeen(at74, quietHouse.plan)).toEqual([]);
  });

  it('lets any tray be left out of a load that is being loaded, or unloaded', () => {
    // Three trays go in from 37 to 40, as long as the seeded one takes, and come out from 58 to 60, as long as the plain ones do.
    for (const now of [38, 50, 59]) {
      const day = dayUnderway(rackMorning.scenario, rackMorning.plan, now);
      for (const id of ['plain-roll-1', 'plain-roll-2', 'seeded-roll-1']) {
        const rest = edited(
          without(rackMorning.plan, ({ tray }) => tray === id),
          (plan) => {
            const carriesUnload = id === 'plain-roll-1' && now < 58;
            if (carriesUnload) task(plan, 'plain-roll-2/bake').handsOn.push({ person: 'ida', for: 'unload', start: 58, end: 60 });
          },
        );
        expect(codesSeen(day, rest), `${id} at ${now}`).toEqual([]);
      }
    }
  });

  it('sees a loading that was another', () => {
    const day = dayUnderway(rackMorning.scenario, rackMorning.plan, 38);
    const later = spoiled(rackMorning.plan, (plan) => {
      workOf(plan, 'plain-roll-1/bake').start = 36;
    });
    expect(codesSeen(day, later)).toEqual(['AS_BEGUN']);
  });
});
