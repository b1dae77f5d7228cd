// What is out of use when, as minutes of the day: what was told before and what is told now. Used by dayAt.ts.
import { type Clock, minuteAt } from '../../model/clock.ts';
import type { Happened } from '../../model/happened.ts';
import type { OutOfUse } from '../../model/underway.ts';

export function outagesOf(before: readonly OutOfUse[], happened: Happened, clock: Clock): readonly OutOfUse[] {
  const told = happened.happened.flatMap((event): OutOfUse[] => {
    if (event.what !== 'out-of-use') return [];
    const { deck, proofer, retarder, mixer } = event;
    const named = { deck, proofer, retarder, mixer };
    const from = Math.max(0, minuteAt(clock, event.from));
    const until = event.until === undefined ? clock.minutes : Math.min(clock.minutes, minuteAt(clock, event.until));
    return (['deck', 'proofer', 'retarder', 'mixer'] as const).flatMap((kind) => {
      const id = named[kind];
      return id === undefined || until <= from ? [] : [{ kind, id, from, until }];
    });
  });
  return [...before, ...told].sort((a, b) => a.from - b.from || a.until - b.until || (a.id < b.id ? -1 : 1));
}
