// Bursts as part of a model: of each some member comes first, soon after what it follows, and the others soon after it. Used by
// shopModel.ts.
import type { Shop } from '../shop.ts';
import type { Twins } from '../twins.ts';
import { isFalse, isTrue, negated } from './literal.ts';
import type { ModelDraft } from './modelDraft.ts';

/** In a group of twins it is the first of them that may come first. What is left out comes along, but never first. */
export function addBursts(model: ModelDraft, { problem, network, unitOfTask }: Shop, twins: Twins): void {
  const followers = new Set(twins.children.flatMap((group) => group.slice(1)));
  for (const burst of problem.bursts) {
    if (model.plannedTask[burst.after] === 0) continue;
    const members = burst.members
      .filter(({ task }) => model.plannedTask[task] === 1)
      .map(({ task, lead }) => ({
        task,
        at: network.startVar[task] as number,
        off: (network.startOff[task] as number) - lead,
      }));
    if (members.length === 0) continue;
    const end = network.endVar[burst.after] as number;
    const endOff = network.endOff[burst.after] as number;
    const heads = members.filter(({ task }) => !followers.has(unitOfTask[task] as number));
    const flags = heads.map(() => (heads.length === 1 ? null : model.addFlag()));
    const isAny = model.presenceOf(burst.after);
    const isNone = isAny === null ? [] : [negated(isAny)];
    if (heads.length > 1) model.clause(...isNone, ...flags.flatMap((flag) => (flag === null ? [] : [isTrue(flag)])));
    heads.forEach((head, h) => {
      const flag = flags[h] ?? null;
      const isFirst = flag === null ? null : isTrue(flag);
      const isIn = model.presenceOf(head.task);
      if (flag !== null && isIn !== null) model.clause(isFalse(flag), isIn);
      model.engine.addArc(head.at, end, head.off - endOff - burst.wait, isFirst);
      for (const other of members) {
        if (other === head) continue;
        model.engine.addArc(head.at, other.at, head.off - other.off, isFirst);
        model.engine.addArc(other.at, head.at, other.off - head.off - burst.within, isFirst);
      }
    });
  }
}
