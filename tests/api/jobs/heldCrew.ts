// Threads whose searches last until they are let go or asked to stop, so that tests decide when what ends.
import type { Crew, Search } from '../../../src/api/jobs/crew.ts';
import type { ThreadAnswer, ThreadNews } from '../../../src/api/jobs/threadTask.ts';
import type { Ask } from '../../../src/api/jobs/work.ts';
import { finePlan } from '../../cli/samplePlan.ts';
import { doneHere } from '../light/doneHere.ts';

export type Held = {
  readonly ask: Ask;
  readonly tell: (news: ThreadNews) => void;
  /** With this plan, or the usual one. */
  readonly letGo: (answer?: ThreadAnswer) => void;
  readonly fail: (fault: unknown) => void;
  isStopped: boolean;
  isKilled: boolean;
};

export type HeldCrew = Crew & { readonly held: readonly Held[]; isWell: boolean; tinyDays: number };

const FINE: ThreadAnswer = { ok: true, json: JSON.stringify(finePlan) };

/** `isDeaf`: searches do not end when asked to. */
export function heldCrew(isDeaf = false): HeldCrew {
  const held: Held[] = [];
  const search = (ask: Ask, tell: (news: ThreadNews) => void): Search => {
    let letGo: Held['letGo'] = () => {};
    let fail: Held['fail'] = () => {};
    const answer = new Promise<ThreadAnswer>((resolve, reject) => {
      letGo = (told = FINE) => resolve(told);
      fail = reject;
    });
    const one: Held = { ask, tell, letGo, fail, isStopped: false, isKilled: false };
    held.push(one);
    const stop = (): void => {
      one.isStopped = true;
      if (!isDeaf) one.letGo();
    };
    const kill = (): void => {
      one.isKilled = true;
      one.fail(new Error('The task has been aborted'));
    };
    return { answer, stop, kill };
  };
  const crew: HeldCrew = {
    held,
    isWell: true,
    tinyDays: 0,
    search,
    light: doneHere,
    warmUp: async () => {},
    planTinyDay: async () => {
      crew.tinyDays += 1;
      return crew.isWell;
    },
    close: async () => {},
  };
  return crew;
}
