// HANDS_ON_TOO_LONG: handsOn <= minutes of a mix.
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { amount, shown } from '../shown.ts';

export function mixHandsOn({ doughs }: Parts): readonly CodedError[] {
  return doughs.sound.flatMap(({ at, value }) =>
    value.steps.flatMap((step, index) => {
      if (step.do !== 'mix' || step.handsOn === undefined || step.handsOn <= step.minutes) return [];
      const says = `The mix of dough ${shown(value.id)} takes ${amount(step.minutes, 'minute')} and needs a person for ${step.handsOn}.`;
      const doThis = `Write handsOn of at most ${step.minutes}, or leave it out for the whole mix.`;
      return [inputErrorAt('HANDS_ON_TOO_LONG', `${at}/steps/${index}/handsOn`, says, doThis)];
    }),
  );
}
