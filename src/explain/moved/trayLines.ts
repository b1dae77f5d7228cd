// Trays that are lost, no longer wanted, left out, or new, in lines people can call. Used by moved.ts.
import type { Plan } from '../../model/plan.ts';
import type { ChangeLine } from '../../model/replanAnswer.ts';
import type { TrayNames } from './trayNames.ts';

export type TraysOut = { readonly lost: readonly string[]; readonly unwanted: readonly string[] };

type Words = { readonly names: TrayNames; readonly says: (minute: number) => string };

function traysOf(plan: Plan): ReadonlyMap<string, { readonly product: string; readonly batch: string }> {
  return new Map(
    plan.batches.flatMap(({ id: batch, trays }) => trays.map(({ id, product }) => [id, { product, batch }] as const)),
  );
}

/** First minute of a tray's batch, and the minute it is ready, unloading included. */
function spanOf(plan: Plan, tray: string, batch: string): { readonly from: number; readonly ready: number } {
  const own = plan.tasks.filter((task) => task.tray === tray || (task.batch === batch && task.tray === undefined));
  const ends = own.flatMap((task) => [task.end, ...task.handsOn.map(({ end }) => end)]);
  return { from: Math.min(...own.map(({ start }) => start)), ready: Math.max(...ends) };
}

const line = (kind: ChangeLine['kind'], minute: number, says: string, trays: readonly string[]): ChangeLine => ({
  kind,
  minute,
  says,
  trays: [...trays],
  batches: [],
  steps: [],
});

/** Lines about whole trays; what has gone is told as of now. */
export function trayLines(
  before: Plan,
  after: Plan,
  { lost, unwanted }: TraysOut,
  now: number,
  words: Words,
): readonly ChangeLine[] {
  const { names, says } = words;
  const [old, young] = [traysOf(before), traysOf(after)];
  const added = [...young]
    .filter(([id]) => !old.has(id) || lost.includes(id))
    .map(([id, { product, batch }]) => ({ id, product, ...spanOf(after, id, batch) }));
  const times = ({ from, ready }: { readonly from: number; readonly ready: number }): string =>
    `${from >= now ? `begun at ${says(from)}` : 'from dough that is there'} and ready at ${says(ready)}`;
  const waiting = [...added];
  const lostLines = lost.map((id) => {
    const own = waiting.findIndex((one) => one.id === id);
    const at = own >= 0 ? own : waiting.findIndex((one) => one.product === old.get(id)?.product && !lost.includes(one.id));
    const [instead] = at < 0 ? [] : waiting.splice(at, 1);
    const isMissing = after.leftOut.some(({ product }) => product === old.get(id)?.product);
    // A new tray may get the number of the one that is lost.
    if (instead !== undefined && instead.id === id)
      return line('lost', now, `${names.tray(id)} is lost; a new one is ${times(instead)}.`, [id]);
    if (instead !== undefined)
      return line('lost', now, `${names.tray(id)} is lost; a new tray, ${names.tray(instead.id)}, is ${times(instead)}.`, [
        id,
        instead.id,
      ]);
    return line('lost', now, `${names.tray(id)} is lost${isMissing ? ', and there is no room for another' : ''}.`, [id]);
  });
  const leftOut = [...old.keys()].filter((id) => !young.has(id) && !lost.includes(id) && !unwanted.includes(id));
  const addedGroups = new Map<string, string[]>();
  for (const one of waiting) addedGroups.set(times(one), [...(addedGroups.get(times(one)) ?? []), one.id]);
  return [
    ...lostLines,
    ...(unwanted.length === 0 ? [] : [line('unwanted', now, `${names.trays(unwanted)}: no longer wanted.`, unwanted)]),
    ...(leftOut.length === 0
      ? []
      : [line('left-out', now, `${names.trays(leftOut)}: left out, there is no room any more.`, leftOut)]),
    ...[...addedGroups].map(([when, ids]) => {
      const minute = Math.min(...waiting.filter(({ id }) => ids.includes(id)).map(({ from }) => from));
      return line('added', Math.max(now, minute), `New: ${names.trays(ids)}, ${when}.`, ids);
    }),
  ];
}
