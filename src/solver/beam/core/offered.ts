// What the core offers to the beam that drives it (../beam.ts). AssemblyScript.
import { chamberOf, poolOf } from './rows';

export { words } from '../../assembly/memory';
export { begin, bestRow, clear, delay, endOf, goOn, setLimit, stepsLooked } from './steps';

/** Where in a row the pools of uses begin, and the chambers of stays; -1 for what has none. */
export function poolPart(): i32 {
  return poolOf;
}

export function chamberPart(): i32 {
  return chamberOf;
}
