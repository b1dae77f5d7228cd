// Trays on a deck now that come off it at another time than planned, in lines people can call. Used by moved.ts.
import type { Plan } from '../../model/plan.ts';
import type { ChangeLine } from '../../model/replanAnswer.ts';
import type { Underway } from '../../model/underway.ts';
import type { TrayNames } from './trayNames.ts';

type Words = { readonly names: TrayNames; readonly says: (minute: number) => string };

/** `before`: the plan it had; it says when each tray was to come off. */
export function outLines(before: Plan, after: Plan, { tasks }: Underway, { names, says }: Words): readonly ChangeLine[] {
  const baking = new Set(
    tasks.flatMap(({ step, state, tray }) => (step === 'bake' && state === 'begun' && tray !== undefined ? [tray] : [])),
  );
  const lasts = new Map(before.tasks.map((task) => [task.id, task.end - task.start]));
  return after.tasks.flatMap((task): readonly ChangeLine[] => {
    const { tray } = task;
    const minutes = lasts.get(task.id);
    if (task.step !== 'bake' || tray === undefined || !baking.has(tray) || minutes === undefined) return [];
    const due = task.start + minutes;
    if (due === task.end) return [];
    const text = `${names.tray(tray)}: out at ${says(task.end)} instead of ${says(due)}.`;
    return [{ kind: 'moved', minute: task.end, says: text, trays: [tray], batches: [], steps: [] }];
  });
}
