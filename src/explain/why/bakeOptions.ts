// The decks where a bake could be done: room, loads, steam and temperature of each. Used by why.
import { sayC, sayMinute } from '../../check/sayMinute.ts';
import type { Bake } from '../../model/steps.ts';
import { type Range, rangeOf } from '../../model/units.ts';
import type { DeckRange } from './deckRange.ts';
import type { Ground, Standing } from './ground.ts';
import { type Hands, handsFor } from './handsFree.ts';
import type { Condition, NextBegins, Option } from './option.ts';
import { roomIn } from './placeOptions.ts';
import { nameOfTask, resourceWords } from './words.ts';

const C_ROUNDING = 1e-6;

/** A load of a deck loaded together that one more tray could join. */
type Load = {
  readonly start: number;
  readonly end: number;
  readonly begins: number;
  readonly done: number;
  readonly trays: number;
};

function loadsOn(ground: Ground, deckId: string, step: Bake): readonly Load[] {
  const loads = new Map<string, Load>();
  for (const tray of ground.day.trays) {
    for (const run of tray.runs) {
      const { place, start, end } = run?.named.task ?? {};
      if (run?.load === undefined || place?.kind !== 'deck' || place.id !== deckId || start === undefined || end === undefined)
        continue;
      const { bakes, loadMinutes, unloadMinutes } = run.load;
      if (step.load > loadMinutes || step.unload > unloadMinutes) continue;
      loads.set(`${start}`, { start, end, begins: start - loadMinutes, done: end + unloadMinutes, trays: bakes.length });
    }
  }
  return [...loads.values()];
}

/** Whether the deck can be within a range from one minute to another, both included. */
function isWarm({ lowC, highC }: DeckRange, range: Range, from: number, to: number): boolean {
  if (range.min > range.max) return false;
  for (let t = from; t <= to; t++) {
    const low = lowC[t];
    const high = highC[t];
    if (low === undefined || high === undefined || low > range.max + C_ROUNDING || high < range.min - C_ROUNDING) return false;
  }
  return true;
}

class DeckTrial {
  readonly minutes: Range;
  private readonly ground: Ground;
  private readonly step: Bake;
  private readonly standing: Standing;
  private readonly wanted: Range;
  private readonly deckRange: DeckRange;
  private readonly isTogether: boolean;
  private readonly loads: ReadonlyMap<number, Load>;

  constructor(ground: Ground, step: Bake, standing: Standing) {
    this.ground = ground;
    this.step = step;
    this.standing = standing;
    this.minutes = rangeOf(step.minutes);
    const range = ground.deckRanges.get(standing.resource.id) as DeckRange;
    this.deckRange = range;
    const { min, max } = rangeOf(step.temperatureC);
    this.wanted = { min: Math.max(min, range.limits.min), max: Math.min(max, range.limits.max) };
    this.isTogether = ground.day.decks.get(standing.resource.id)?.oven.loading === 'together';
    const loads = this.isTogether ? loadsOn(ground, standing.resource.id, step) : [];
    this.loads = new Map(loads.map((load) => [load.begins, load]));
  }

  /** A load the tray can go in with when its loading begins at a minute. */
  joined(minute: number): Load | undefined {
    const load = this.loads.get(minute);
    if (load === undefined || load.trays >= this.standing.resource.room) return undefined;
    const lasts = load.end - load.start;
    return lasts >= this.minutes.min && lasts <= this.minutes.max ? load : undefined;
  }

  /** Minutes from a bake begin on in which the tray could stand on the deck; loaded together, as a load of its own. */
  private roomFrom(start: number): number {
    if (!this.isTogether) return this.standing.freeRun[start] ?? 0;
    const { held } = this.standing;
    let minutes = 0;
    while (minutes < this.minutes.max && held[start + minutes] === 0) minutes++;
    return minutes;
  }

  private isWarmFrom(start: number, lasts: number): boolean {
    return isWarm(this.deckRange, this.wanted, start, start + lasts);
  }

  next(minute: number, unload: Hands | null): readonly NextBegins[] {
    const { load, unload: unloadMinutes, waitUpTo } = this.step;
    const found: NextBegins[] = [];
    const joined = this.joined(minute);
    if (joined !== undefined && this.isWarmFrom(joined.start, joined.end - joined.start))
      found.push({ from: joined.done, to: joined.done + waitUpTo });
    const start = minute + load;
    const room = this.roomFrom(start);
    for (let lasts = this.minutes.min; lasts <= Math.min(this.minutes.max, room); lasts++) {
      const done = start + lasts + unloadMinutes;
      if (!this.isWarmFrom(start, lasts)) break;
      if (done <= this.ground.minutes && (unload === null || unload.condition.holds(start + lasts)))
        found.push({ from: done, to: done + waitUpTo });
    }
    return found;
  }

  conditions(load: Hands | null, unload: Hands | null): readonly Condition[] {
    const { id } = this.standing.resource;
    const { min } = this.minutes;
    const unless = (condition: Condition): Condition => ({
      ...condition,
      holds: (minute) => this.joined(minute) !== undefined || condition.holds(minute),
    });
    return [
      ...this.steam(id),
      { kind: 'deck', id, rule: 'DECK_TEMPERATURE', holds: (t) => this.isWarmAt(t), hinders: (t) => this.tooWarm(t) },
      this.isTogether ? this.loadRoom(id) : roomIn(this.ground, this.standing, 'DECK_CAPACITY', this.step.load, min),
      ...(load === null ? [] : [unless(load.condition)]),
      ...(unload === null ? [] : [unless(this.unloading(unload.condition))]),
    ];
  }

  /** Hands to unload after some length of the bake. */
  private unloading(condition: Condition): Condition {
    const { load } = this.step;
    const { min, max } = this.minutes;
    const at = (minute: number): number | undefined => {
      for (let lasts = min; lasts <= max; lasts++) if (condition.holds(minute + load + lasts)) return lasts;
      return undefined;
    };
    return {
      ...condition,
      holds: (minute) => at(minute) !== undefined,
      hinders: (minute) => condition.hinders(minute + load + min),
    };
  }

  private steam(id: string): readonly Condition[] {
    if (!this.step.steam || this.ground.day.decks.get(id)?.deck.steam === true) return [];
    const says = `${resourceWords('deck', this.standing.resource.name)} gives no steam`;
    return [{ kind: 'deck', id, rule: 'STEAM', holds: () => false, hinders: () => ({ says, full: [], byTasks: [] }) }];
  }

  private isWarmAt(minute: number): boolean {
    const joined = this.joined(minute);
    if (joined !== undefined && this.isWarmFrom(joined.start, joined.end - joined.start)) return true;
    return this.isWarmFrom(minute + this.step.load, this.minutes.min);
  }

  private tooWarm(minute: number): ReturnType<Condition['hinders']> {
    const { lowC, highC } = this.deckRange;
    const what = resourceWords('deck', this.standing.resource.name);
    const { min, max } = rangeOf(this.step.temperatureC);
    const wants = `the tray wants ${min === max ? sayC(min) : `${sayC(min).slice(0, -2)} to ${sayC(max)}`}`;
    const from = minute + this.step.load;
    for (let t = from; t <= Math.min(from + this.minutes.min, this.ground.minutes); t++) {
      const low = lowC[t] as number;
      const high = highC[t] as number;
      if (low <= this.wanted.max + C_ROUNDING && high >= this.wanted.min - C_ROUNDING) continue;
      const isHot = low > this.wanted.max;
      const bound = isHot ? `${sayC(low)} at the least` : `${sayC(high)} at the most`;
      const says = `at ${sayMinute(this.ground.day.clock, t)} between the bakes that stand there ${what} is at ${bound}; ${wants}`;
      return { says, full: [], byTasks: this.heldBy(t, isHot) };
    }
    return { says: `the day ends before ${what} could bake it; ${wants}`, full: [], byTasks: [] };
  }

  /** The bakes nearest to a minute whose range keeps the deck too hot or too cold. */
  private heldBy(minute: number, isHot: boolean): readonly string[] {
    const apart = ({ start, end }: { readonly start: number; readonly end: number }): number =>
      Math.max(0, start - minute, minute - end);
    const bakes = this.ground.day.trays.flatMap(({ runs }) =>
      runs.flatMap((run) => {
        const { named, step } = run ?? {};
        if (step?.do !== 'bake' || named?.task.place?.id !== this.standing.resource.id) return [];
        const { min, max } = rangeOf(step.temperatureC);
        return (isHot ? min > this.wanted.max : max < this.wanted.min) ? [named] : [];
      }),
    );
    return bakes.sort((a, b) => apart(a.task) - apart(b.task)).map(({ id }) => id);
  }

  /** Loaded together: the tray goes in with a load, or alone on an empty deck. */
  private loadRoom(id: string): Condition {
    const { load } = this.step;
    const { standing, ground } = this;
    const start = (minute: number): number => minute + load;
    return {
      kind: 'deck',
      id,
      rule: 'LOAD_TOGETHER',
      holds: (minute) => this.joined(minute) !== undefined || this.roomFrom(start(minute)) >= this.minutes.min,
      hinders: (minute) => {
        const blockedAt = start(minute) + this.roomFrom(start(minute));
        const holders = standing.resource.holders.filter((one) => one.from <= blockedAt && one.until > blockedAt);
        const first = holders[0];
        if (first === undefined) return { says: 'the day ends first', full: [], byTasks: [] };
        const say = (t: number): string => sayMinute(ground.day.clock, t);
        const what = resourceWords('deck', standing.resource.name);
        const says = `${what} bakes a load with ${nameOfTask(first.taskId)} ${say(first.from)} to ${say(first.until)}, and this tray cannot join it`;
        return { says, full: [], byTasks: holders.map(({ taskId }) => taskId) };
      },
    };
  }
}

/** Every deck. */
export function bakeOptions(ground: Ground, step: Bake): readonly Option[] {
  const load = handsFor(ground, 'bake', { after: 0, minutes: step.load });
  const unload = handsFor(ground, 'bake', { after: 0, minutes: step.unload });
  return ground.standing
    .filter(({ resource }) => resource.kind === 'deck')
    .map((standing) => {
      const trial = new DeckTrial(ground, step, standing);
      return {
        name: standing.resource.name,
        conditions: trial.conditions(load, unload),
        people: load?.people ?? [],
        next: (minute) => trial.next(minute, unload),
      };
    });
}
