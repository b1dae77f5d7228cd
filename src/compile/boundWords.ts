// Says in the baker's words why no plan can cost less.
import { wallClockAt } from '../model/clock.ts';
import type { Scenario } from '../model/scenario.ts';
import type { BoundArgument, GroupName } from '../solver/bounds/bound.ts';
import type { PoolRole } from './shopPools.ts';
import type { Compiled } from './shopProblem.ts';

const PLACE_WORDS: Record<PoolRole['kind'], string> = {
  people: 'hands',
  bench: 'bench',
  shelf: 'proofer shelves',
  retarder: 'retarder',
  bowl: 'mixing',
  rack: 'cooling rack',
};

function until(scenario: Scenario, compiled: Compiled, makespan: number): string {
  if (scenario.goals.aim === 'start-late')
    return `cannot be done in less than ${makespan} minutes from first hands-on to last tray ready`;
  return `cannot all be ready before ${wallClockAt(compiled.clock, Math.min(compiled.origin + makespan, compiled.clock.minutes))}`;
}

function workWords(uses: number): string {
  return uses === 1 ? 'one piece of work' : `${uses} pieces of work`;
}

/** One sentence for the argument behind the lower bound. */
export function boundWords(scenario: Scenario, compiled: Compiled, argument: BoundArgument): string {
  const says = (makespan: number): string => until(scenario, compiled, makespan);
  switch (argument.kind) {
    case 'path': {
      const tray = compiled.trays.find(({ unit }) => unit === argument.unit);
      const name = tray === undefined ? 'the slowest bread' : (tray.product.name ?? tray.product.id);
      return `${name}: its own steps, one after another, ${says(argument.makespan)}.`;
    }
    case 'pool-work': {
      const kind = compiled.shop.roles[argument.pools[0] as number]?.kind ?? 'people';
      return `${PLACE_WORDS[kind]}: ${workWords(argument.uses)} and what must come before and after ${says(argument.makespan)}.`;
    }
    case 'chamber-work':
      return `oven: ${argument.stays} trays through its decks ${says(argument.makespan)}.`;
    case 'flow': {
      const name = (group: GroupName): string =>
        group.isChamber ? 'oven' : PLACE_WORDS[compiled.shop.roles[group.ids[0] as number]?.kind ?? 'people'];
      const slow = [
        ...(argument.through === null ? [] : [`beginning at the pace of the ${name(argument.through)}`]),
        ...(argument.to === null ? [] : [`ending at the pace of the ${name(argument.to)}`]),
      ];
      const why = slow.length === 0 ? '' : ` (${slow.join(' and ')})`;
      return `${name(argument.at)}: ${workWords(argument.uses)}${why} ${says(argument.makespan)}.`;
    }
    case 'chamber-loads':
      return 'oven: however trays are dealt to decks, baking them and changing temperature between them costs as much.';
    case 'omission':
      return `at least ${argument.omitted} ${argument.omitted === 1 ? 'tray finds' : 'trays find'} no room in the day, whatever the plan.`;
    case 'one-omission':
      return 'leaving out a single tray already costs as much.';
    case 'search':
      return 'every way to make a cheaper plan was followed until it broke a rule: bench, hands, shelves and oven leave none.';
    case 'search-omission':
      return argument.isNecessary
        ? 'every way to plan all trays was followed until it broke a rule: at least one must be left out.'
        : 'every plan of all trays costs at least as much as leaving one out.';
    case 'none':
      return 'no argument found: the price of a plan is at least nothing.';
  }
}
