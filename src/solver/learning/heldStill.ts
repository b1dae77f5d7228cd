// What a step of the learning solver assumes: all that is not set free stays near where it is. Used by improver.ts.
import type { Layout } from '../layout.ts';
import type { StayUse, UseOfPool } from '../shop.ts';
import { atLeast, atMost, isFalse, isTrue, type Literal } from './literal.ts';
import type { Neighbourhood } from './neighbourhood.ts';
import type { ShopModel } from './shopModel.ts';

/** Variables that are not free stay near their time, stays in their chamber, and units planned or left out. `time`: -1 where a
 * variable is not planned. */
export function heldStill(model: ShopModel, layout: Layout, time: Int32Array, place: Neighbourhood): Literal[] {
  const held: Literal[] = [];
  for (let v = 0; v < time.length; v++) {
    const at = time[v] as number;
    if (at >= 0 && place.isFree[v] === 0) held.push(atLeast(v, at - place.earlier), atMost(v, at + place.later));
  }
  model.presence.left.forEach((variable, u) => {
    if (variable < 0) return;
    const tasks = model.shop.problem.units[u]?.tasks ?? [];
    const isLeft = (layout.start[tasks[0] as number] as number) < 0;
    const isFree =
      (isLeft && place.mayPlan) || tasks.some((task) => place.isFree[model.shop.network.startVar[task] as number] === 1);
    if (!isFree) held.push(isLeft ? isTrue(variable) : isFalse(variable));
  });
  if (!place.keepsChambers) return held;
  model.poolChoice.forEach((flags, u) => {
    const use = model.shop.uses[u] as UseOfPool;
    if (flags === null || use.durations === null || place.isFree[use.fromVar] === 1) return;
    flags.forEach((flag, i) => {
      if (use.pools[i] === layout.pool[u]) held.push(isTrue(flag));
    });
  });
  model.stays.flags.forEach((flags, s) => {
    const stay = model.shop.stays[s] as StayUse;
    if (flags === null || place.isFree[stay.startVar] === 1) return;
    flags.forEach((flag, i) => {
      if (stay.chambers[i] === layout.chamber[s]) held.push(isTrue(flag));
    });
  });
  return held;
}
