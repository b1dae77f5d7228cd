// Cuts a plan at a minute: the same scenario with the day so far, as it went by that plan. For the tests of days under way.
import { judgedDayOf, type StepRun } from '../../../src/check/judgedDay.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { type UnderwayTask, underwayTaskSchema } from '../../../src/model/underway.ts';
import type { WrittenPlan } from '../../../src/model/writtenPlan.ts';

/** What of a scenario under way a test may change. */
export type ScenarioUnderway = Scenario & { underway: NonNullable<Scenario['underway']> };

const BY_ITSELF: readonly string[] = ['bulk', 'rest', 'retard', 'proof', 'cool'];

/** What goes on by itself is over when the next step begins; of a last step, and of any other, when it is done. */
function stateOf({ step, begins, done }: StepRun, nextBegins: number | undefined, now: number): UnderwayTask['state'] {
  if (begins >= now) return 'planned';
  const isOver = BY_ITSELF.includes(step.do) && nextBegins !== undefined ? nextBegins < now : done <= now;
  return isOver ? 'ended' : 'begun';
}

function recordsOf(
  runs: readonly (StepRun | undefined)[],
  steppedIn: { readonly batch: string; readonly tray?: string },
  afterLast: number | undefined,
  now: number,
): readonly UnderwayTask[] {
  const timesSeen = new Map<string, number>();
  return runs.map((run, index) => {
    if (run === undefined) throw new Error('a plan is cut only when every step is there');
    const { step, start, end, place, handsOn } = run.named.task;
    const ordinal = (timesSeen.get(step) ?? 0) + 1;
    timesSeen.set(step, ordinal);
    const state = stateOf(run, runs[index + 1]?.begins ?? afterLast, now);
    return underwayTaskSchema.parse({ step, ordinal, ...steppedIn, state, start, end, place, handsOn });
  });
}

export function dayUnderway(scenario: Scenario, plan: WrittenPlan, now: number): ScenarioUnderway {
  const { batches, decks } = judgedDayOf(scenario, plan);
  const tasks = batches.flatMap((batch) => {
    const firstTray = Math.min(...batch.trays.flatMap(({ runs }) => runs[0]?.begins ?? []));
    return [
      ...recordsOf(batch.runs, { batch: batch.id }, firstTray, now),
      ...batch.trays.flatMap((tray) => recordsOf(tray.runs, { batch: batch.id, tray: tray.id }, undefined, now)),
    ];
  });
  return {
    ...structuredClone(scenario),
    underway: {
      now,
      movePrice: 2,
      batches: batches.map(({ id, dough, trays }) => ({
        id,
        dough: dough.id,
        trays: trays.map((tray) => ({ id: tray.id, product: tray.product.id })),
      })),
      tasks: structuredClone(tasks) as UnderwayTask[],
      decks: [...decks.values()].map(({ id, setPoints }) => ({
        id,
        setPoints: structuredClone(setPoints).filter(({ start }) => start < now),
      })),
      out: [],
    },
  };
}

/** What is known of the step with the id `tray/step` or `batch/step`. */
export function recordOf(scenario: ScenarioUnderway, id: string): UnderwayTask {
  const found = scenario.underway.tasks.find(({ tray, batch, step }) => `${tray ?? batch}/${step}` === id);
  if (found === undefined) throw new Error(`nothing is known of ${id}`);
  return found;
}
