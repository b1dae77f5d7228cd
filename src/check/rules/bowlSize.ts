// BOWL_SIZE: kg of a batch <= bowlKg of the mixer it is mixed in.
import { batchKg, KG_TOLERANCE } from '../batchWeight.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute } from '../sayMinute.ts';

export function bowlSize(day: JudgedDay): readonly Finding[] {
  const bowlKgById = new Map((day.scenario.equipment.mixers ?? []).map(({ id, bowlKg }) => [id, bowlKg]));
  return day.batches.flatMap((batch) => {
    const kg = batchKg(batch);
    return batch.runs.flatMap((run) => {
      const place = run?.named.task.place;
      if (run?.step.do !== 'mix' || place?.kind !== 'bowl') return [];
      const bowlKg = bowlKgById.get(place.id);
      if (bowlKg === undefined || kg <= bowlKg + KG_TOLERANCE) return [];
      const { id, task } = run.named;
      const says =
        `Batch ${batch.id}, ${kg.toFixed(3)} kg, is mixed at ${sayMinute(day.clock, task.start)} in ${place.id}, ` +
        `whose bowl takes ${bowlKg} kg: ${(kg - bowlKg).toFixed(3)} kg too much.`;
      return [{ says, taskIds: [id], minute: task.start, until: task.end }];
    });
  });
}
