// What a scenario under way says of each step, found by what the step is done to. Used where a plan is laid beside it.
import type { StepKind } from '../model/steps.ts';
import type { Underway, UnderwayTask } from '../model/underway.ts';

/** What is known of one tray's, or one batch's, n-th step of a kind, n from 1. */
export type RecordOf = (step: StepKind, ordinal: number) => UnderwayTask | undefined;

export type Records = {
  readonly ofTray: (trayId: string) => RecordOf;
  readonly ofBatch: (batchId: string) => RecordOf;
};

function keyOf(isTray: boolean, id: string, step: StepKind, ordinal: number): string {
  return JSON.stringify([isTray, id, step, ordinal]);
}

/** Nothing is known of a day that is not under way. */
export function recordsOf(underway: Underway | undefined): Records {
  const byKey = new Map(
    (underway?.tasks ?? []).map((record) => {
      const { tray, batch, step, ordinal } = record;
      return [keyOf(tray !== undefined, tray ?? batch, step, ordinal), record];
    }),
  );
  const of = (isTray: boolean) => (id: string) => (step: StepKind, ordinal: number) =>
    byKey.get(keyOf(isTray, id, step, ordinal));
  return { ofTray: of(true), ofBatch: of(false) };
}
