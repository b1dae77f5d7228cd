// Short ways to write a plan down by hand in the tests. Nothing here works anything out.
import type { HandsOn, PlaceKind } from '../../../src/model/plan.ts';
import type { StepKind } from '../../../src/model/steps.ts';
import type { WrittenTask } from '../../../src/model/writtenPlan.ts';

type Where = WrittenTask['place'];

/** A place, as at('deck', 'hearth/upper', 1). */
export function at(kind: PlaceKind, id: string, position = 1): NonNullable<Where> {
  return { kind, id, position };
}

/** Work of a person, as by('ana', 'load', 91, 92). */
export function by(person: string, work: HandsOn['for'], start: number, end: number): HandsOn {
  return { person, for: work, start, end };
}

/** A step of a batch. */
export function ofBatch(
  batch: string,
  step: StepKind,
  start: number,
  end: number,
  place?: Where,
  handsOn: HandsOn[] = [],
): WrittenTask {
  return { id: `${batch}/${step}`, step, batch, start, end, handsOn, ...(place === undefined ? {} : { place }) };
}

/** A way to write the steps of one tray. */
export function ofTray(tray: string, product: string, batch: string) {
  return (step: StepKind, start: number, end: number, place?: Where, handsOn: HandsOn[] = []): WrittenTask => ({
    id: `${tray}/${step}`,
    step,
    product,
    batch,
    tray,
    start,
    end,
    handsOn,
    ...(place === undefined ? {} : { place }),
  });
}
