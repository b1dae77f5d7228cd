// How tight a rough plan of a schedule in the making is: what of it would be late, and where slack is short. Used by the estimate.
// Part of the beam's core.
import { at } from '../../assembly/memory';
import { high, low } from './rows';
import { latest } from './shop';

/** Slack that is enough: less of it is a lack. */
let slack: i32 = 0;
/** How late something begun would be, and by how much the least slack falls short of what is enough; 0 or more. */
export let late: i32 = 0;
export let lack: i32 = 0;

export function resetTightness(enough: i32): void {
  slack = enough;
  late = 0;
  lack = 0;
}

/** Whether a point not placed yet hangs on one that is. */
export function isBegun(row: usize, v: i32): bool {
  return at(row, v) < 0 && at(row, high + v) < at(latest, v);
}

/** Notes how late a point would come at a time, or how much slack it would lack: no more can be asked for than it had. */
export function weigh(row: usize, v: i32, time: i32): void {
  const tooLate = time - at(row, high + v);
  if (tooLate > late) late = tooLate;
  const tooTight = tooLate + min(slack, at(row, high + v) - at(row, low + v));
  if (tooTight > lack) lack = tooTight;
}
