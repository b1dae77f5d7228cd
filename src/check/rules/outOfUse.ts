// OUT_OF_USE: of a deck or bowl that is out [from, until): each bake or mix has end <= from or start >= until; of a proofer or
// retarder: each step has start < from or start >= until. What is in a cabinet already stays in it.
import type { PlaceKind } from '../../model/plan.ts';
import type { OutOfUse } from '../../model/underway.ts';
import { cutAtNow } from '../cutAtNow.ts';
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay, StepRun } from '../judgedDay.ts';
import { placeKindOf } from '../places.ts';
import { sayMinute } from '../sayMinute.ts';

const PLACE_OF: Readonly<Record<OutOfUse['kind'], PlaceKind>> = {
  deck: 'deck',
  proofer: 'shelf',
  retarder: 'retarder',
  mixer: 'bowl',
};

function runFindings(day: JudgedDay, run: StepRun, out: OutOfUse): readonly Finding[] {
  const { id, task } = run.named;
  const at = (minute: number) => sayMinute(day.clock, minute);
  const span = `the ${out.kind} ${out.id} is out of use from ${at(out.from)} to ${at(out.until)}`;
  if (out.kind === 'proofer' || out.kind === 'retarder') {
    if (task.start < out.from || task.start >= out.until) return [];
    const says = `${id} goes in at ${at(task.start)}, and ${span}.`;
    return [{ says, taskIds: [id], minute: task.start, until: task.start }];
  }
  const [from, until] = [Math.max(task.start, out.from), Math.min(task.end, out.until)];
  if (from >= until) return [];
  return cutAtNow(day, from, until).map((part) => ({
    says: `${id} is there between ${at(part.from)} and ${at(part.until)}, and ${span}.`,
    taskIds: [id],
    minute: part.from,
    until: part.until,
  }));
}

export function outOfUse(day: JudgedDay): readonly Finding[] {
  const runs = allRuns(day);
  return (day.scenario.underway?.out ?? []).flatMap((out) =>
    runs
      .filter(({ step, named: { task } }) => {
        const kind = PLACE_OF[out.kind];
        return placeKindOf(step) === kind && task.place?.kind === kind && task.place.id === out.id;
      })
      .flatMap((run) => runFindings(day, run, out)),
  );
}
