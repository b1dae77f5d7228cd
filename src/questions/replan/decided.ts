// What is decided of each step that has not begun, and what was asked to stay that cannot. Used by dayAt.ts.
import type { Happened } from '../../model/happened.ts';
import type { KEPT } from '../../model/underway.ts';
import type { Standing } from './trayStates.ts';

type Kept = (typeof KEPT)[number];

export type Decided = {
  readonly keepsById: ReadonlyMap<string, readonly Kept[]>;
  /** Task ids whose time was to be kept and is past. */
  readonly timePast: readonly string[];
};

/** In the order in which they are always written. */
const ORDER: readonly Kept[] = ['time', 'place', 'people'];

export function decidedOf({ keep }: Happened, standings: ReadonlyMap<string, Standing>, now: number): Decided {
  const keepsById = new Map<string, readonly Kept[]>();
  const timePast: string[] = [];
  for (const { job, state } of standings.values()) {
    const { id, tray, batch } = job.task;
    const asked = keep.filter((one) => one.task === id || (one.tray !== undefined && one.tray === tray) || one.batch === batch);
    if (asked.length === 0 || state !== 'planned') continue;
    const isPast = job.plannedBegin < now;
    const wanted = ORDER.filter((kept) => asked.some(({ keeps }) => keeps.includes(kept)));
    if (isPast && wanted.includes('time')) timePast.push(id);
    const keeps = wanted.filter((kept) => kept !== 'time' || !isPast);
    if (keeps.length > 0) keepsById.set(id, keeps);
  }
  return { keepsById, timePast };
}
